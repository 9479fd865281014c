using System.Collections.Immutable;
using Heapwright.Core.Bins;
using UnitsNet;

namespace Heapwright.Validation.Simulation;

/// <summary>
/// The published heaps that can be simulated from their recipe alone. Abstracts give milestones and little set-up:
/// bin sizes, densities and air temperatures not stated there are ours, chosen before the runs and not fitted.
/// </summary>
public static class PublishedHeaps
{
    private static readonly Bin Row = Bin.Windrow(
        Length.FromMeters(6),
        Length.FromMeters(3),
        Length.FromMeters(1.5)
    );

    /// <summary>Separated cattle-slurry solids, about 450 kg/m³ at 70 % moisture.</summary>
    private static readonly HeapCase Solids = new("slurry solids", Row, [("cow_manure_straw", 1)])
    {
        Moisture = 70,
        Density = 450,
        Ratio = 34,
        Days = 90,
    };

    /// <summary>All of them.</summary>
    public static ImmutableArray<PublishedHeap> All { get; } =
    [
        new(
            "brito_slurry_solids",
            Solids with
            {
                Name = "slurry solids with straw, static",
                Parts = [("cow_manure_straw", 0.8), ("wheat_straw", 0.2)],
                Density = 350,
                Ratio = 30,
            },
            Heats: true,
            Peak: 68,
            FinalRatio: 12
        ),
        new(
            "brito_slurry_solids",
            Solids with
            {
                Name = "slurry solids, wetter batch",
                Moisture = 78,
                Density = 600,
            },
            Heats: false,
            Peak: 51
        ),
        new(
            "brito_slurry_solids",
            Solids with
            {
                Name = "slurry solids, 30 % dry matter",
            },
            Heats: true,
            First55: 2,
            FinalRatio: 14
        ),
        new(
            "brito_slurry_solids",
            Solids with
            {
                Name = "slurry solids, plastic cover",
                Cover = "lid",
            },
            Heats: true,
            Peak: 60,
            FinalRatio: 14
        ),
        new(
            "brito_slurry_solids",
            Solids with
            {
                Name = "slurry solids, three turns",
                Turns = [14, 28, 42],
            },
            Heats: true,
            Peak: 65,
            FinalRatio: 15
        ),
        new(
            "michel2004",
            new HeapCase(
                "dairy manure and sawdust, turned windrow",
                Bin.Windrow(Length.FromMeters(10), Length.FromMeters(3), Length.FromMeters(1.2)),
                [("sawdust_hardwood", 0.6), ("cow_manure_fresh", 0.4)]
            )
            {
                Moisture = 65,
                Density = 450,
                Ratio = 38,
                Days = 90,
                Turns = [7, 14, 21, 28, 35, 42, 49, 56],
            },
            Heats: true,
            First55: 10
        ),
        new(
            "karnchanawong2011",
            new HeapCase(
                "food scraps and leaves, 200 l bin",
                Bin.Ring(Length.FromMeters(0.57), Length.FromMeters(0.8)),
                [("kitchen_scraps", 0.5), ("leaves_mixed_dry", 0.5)]
            )
            {
                Air = 27,
                Swing = 5,
                Moisture = 60,
                Walls = "bare",
                Cover = "lid",
                Days = 75,
                FedDays = 45,
            },
            Heats: true,
            Peak: 57,
            FinalRatio: 15.4
        ),
        new(
            "household_bins_2017",
            new HeapCase(
                "food waste and chips, 10 l bin",
                Bin.Ring(Length.FromMeters(0.24), Length.FromMeters(0.22)),
                [("kitchen_scraps", 0.6), ("wood_chips_coarse", 0.4)]
            )
            {
                Air = 24,
                Swing = 3,
                Moisture = 60,
                Walls = "timber",
                Cover = "lid",
                Days = 60,
            },
            Heats: false,
            Peak: 46.2,
            DryLoss: 49
        ),
        new(
            "drum_vegetable_waste",
            new HeapCase(
                "vegetable waste, 550 l drum, C:N 24",
                Bin.Ring(Length.FromMeters(0.9), Length.FromMeters(0.86)),
                [
                    ("vegetable_peelings", 0.5),
                    ("cow_manure_fresh", 0.25),
                    ("sawdust_hardwood", 0.25),
                ]
            )
            {
                Air = 28,
                Moisture = 65,
                Ratio = 24,
                Walls = "bare",
                Cover = "lid",
                Days = 20,
                Turns = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
            },
            Heats: true,
            Peak: 63.5
        ),
        new(
            "drum_vegetable_waste",
            new HeapCase(
                "vegetable waste, 550 l drum, C:N 30",
                Bin.Ring(Length.FromMeters(0.9), Length.FromMeters(0.86)),
                [
                    ("vegetable_peelings", 0.45),
                    ("cow_manure_fresh", 0.2),
                    ("sawdust_hardwood", 0.35),
                ]
            )
            {
                Air = 28,
                Moisture = 65,
                Ratio = 30,
                Walls = "bare",
                Cover = "lid",
                Days = 20,
                Turns = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
            },
            Heats: true,
            Peak: 61.2
        ),
        new(
            "cornell_physics",
            new HeapCase(
                "40 l indoors",
                Bin.Ring(Length.FromMeters(0.37), Length.FromMeters(0.38)),
                [("kitchen_scraps", 0.5), ("leaves_mixed_dry", 0.5)]
            )
            {
                Air = 20,
                Swing = 0,
                Moisture = 60,
                Walls = "timber",
                Cover = "lid",
            },
            Heats: false,
            Peak: 45
        ),
        new(
            "cornell_physics",
            new HeapCase(
                "large heap",
                Bin.Box(Length.FromMeters(1.5), Length.FromMeters(1.5), Length.FromMeters(1.2)),
                [
                    ("kitchen_scraps", 0.25),
                    ("grass_clippings_fresh", 0.25),
                    ("leaves_mixed_dry", 0.5),
                ]
            )
            {
                Air = 15,
                Moisture = 60,
            },
            Heats: true,
            Peak: 65,
            First55: 3
        ),
        new(
            "kamp2024",
            new HeapCase(
                "broiler litter, static",
                Bin.Cone(Length.FromMeters(9.3), Length.FromMeters(1.8)),
                [("turkey_broiler_litter", 1)]
            )
            {
                Air = 14.5,
                Swing = 4,
                Start = 26,
                Moisture = 48.8,
                Density = 500,
                Days = 44,
            },
            Heats: true,
            Peak: 56,
            First55: 7
        ),
    ];
}
