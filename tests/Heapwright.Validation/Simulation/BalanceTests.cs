using Heapwright.Core.Bins;
using Heapwright.Core.Simulation;
using UnitsNet;

namespace Heapwright.Validation.Simulation;

/// <summary>
/// The identity suite: water, carbon, nitrogen and energy close in every run, over shapes, covers, walls, events,
/// extreme mixtures and weather from −15 to 40 °C; nothing is negative, nothing is not a number.
/// </summary>
public sealed class BalanceTests
{
    private const double Relative = 1e-6; // of what was put in
    private const double EnergyPercent = 0.1;

    private static readonly Bin[] Bins =
    [
        Bin.Box(Length.FromMeters(1), Length.FromMeters(1), Length.FromMeters(1)),
        Bin.Box(Length.FromMeters(3), Length.FromMeters(1.2), Length.FromMeters(0.5)),
        Bin.Ring(Length.FromMeters(1.2), Length.FromMeters(1)),
        Bin.Cone(Length.FromMeters(2.5), Length.FromMeters(1.2)),
        Bin.Windrow(Length.FromMeters(8), Length.FromMeters(2.5), Length.FromMeters(1.2)),
    ];

    private const int EventSets = 7;

    private static readonly string[] Covers = ["none", "breathable", "lid", "straw"];

    private static readonly string[] Walls = ["bare", "slatted", "timber", "straw_bale", "none"];

    /// <summary>The extreme mixtures.</summary>
    public static TheoryData<string> Mixtures =>
        [
            "usual",
            "soaked",
            "dust dry",
            "packed",
            "fluffy",
            "all fast",
            "all lignin",
            "hungry",
            "rich",
        ];

    [Theory]
    [MemberData(nameof(Mixtures))]
    public void EveryRun_KeepsItsBooks(string mixture)
    {
        var mix = Named(mixture);
        var n = 0;
        foreach (var bin in Bins)
        {
            foreach (var air in new[] { -15.0, 2, 18, 40 })
            {
                // Covers, walls and events go round, so that every pair meets in some run.
                var cover = Covers[n % Covers.Length];
                var walls = Walls[n / 2 % Walls.Length];
                var run = (
                    mix with
                    {
                        Bin = bin,
                        CubicMetres = bin.Volume.CubicMeters,
                        Air = air,
                        Start = Math.Max(air, 5),
                        Rain = n % 3 == 0 ? 8 : 0,
                        Cover = cover,
                        Walls = walls,
                        Days = 25,
                        Members = 8,
                        Events = Events(mix, n),
                    }
                ).Run();
                Check(
                    run,
                    $"{mixture}, {bin.Shape}, {air} °C, {cover}, {walls}, events {n % EventSets}"
                );
                n++;
            }
        }
    }

    private static GardenMix Named(string mixture) =>
        mixture switch
        {
            "soaked" => new GardenMix { Moisture = 85, Dry = 130 },
            "dust dry" => new GardenMix { Moisture = 8 },
            "packed" => new GardenMix { Dry = 450, Particle = "fine" },
            "fluffy" => new GardenMix { Dry = 40, Particle = "coarse" },
            "all fast" => new GardenMix { Fast = 80, Lignin = 2 },
            "all lignin" => new GardenMix { Fast = 0, Lignin = 45 },
            "hungry" => new GardenMix { Ratio = 400 },
            "rich" => new GardenMix { Ratio = 8 },
            _ => new GardenMix(),
        };

    private static HeapEvent[] Events(GardenMix mix, int n) =>
        (n % EventSets) switch
        {
            0 => [],
            1 => [new Turned(5, 0.6, TurnedPart.All), new Turned(10.3, 0.95, TurnedPart.All)],
            2 => [new Watered(3, 60), new Turned(3, 0.8, TurnedPart.OutsideIn)],
            3 =>
            [
                new Added(6, [(mix with { CubicMetres = 0.2 }).Ingredient]),
                new Turned(9, 0.8, TurnedPart.TopHalf),
            ],
            4 => [new Covered(2, Surroundings.Covers["straw"]), new Watered(7.1, 200)],
            5 =>
            [
                new Split(5, 0.4),
                new Moved(5, 0.95, Bins[n % Bins.Length], Surroundings.Walls["bare"]),
                new Added(8, [(mix with { CubicMetres = 0.1 }).Ingredient]),
                new Split(12, 0.5),
            ],
            _ =>
            [
                new Added(4, [(mix with { CubicMetres = 0.1, Moisture = 30 }).Ingredient]),
                new Watered(4, 30),
                new Turned(12, 0.8, TurnedPart.All),
                new Covered(12, Surroundings.Covers["lid"]),
            ],
        };

    private static void Check(SimulationAnswer run, string what)
    {
        foreach (var (books, member) in run.Books.Select((b, i) => (b, i)))
        {
            Assert.True(Math.Abs(books.WaterError) <= Relative * run.WaterIn[member], what);
            Assert.True(Math.Abs(books.CarbonError) <= Relative * run.CarbonIn[member], what);
            Assert.True(Math.Abs(books.NitrogenError) <= Relative * run.NitrogenIn[member], what);
            Assert.True(Math.Abs(books.EnergyErrorPercent) <= EnergyPercent, what);
        }

        for (var i = 0; i < run.Days.Length; i++)
        {
            for (var m = 0; m < run.Books.Length; m++)
            {
                Assert.InRange(run.Oxygen[i][m], 0, 21);
                Assert.InRange(run.Moisture[i][m], 0, 100);
                Assert.True(run.Height[i][m] > 0, what);
                foreach (var zone in run.Zones[i])
                {
                    Assert.InRange(zone[m], -30, 85);
                }
            }
        }

        Assert.True(run.LeastMass >= 0, $"{what}: {run.LeastMass} kg");
    }
}
