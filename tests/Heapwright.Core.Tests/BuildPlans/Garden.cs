using System.Collections.Immutable;
using Heapwright.Core.Amounts;
using Heapwright.Core.Bins;
using Heapwright.Core.BuildPlans;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using UnitsNet;

namespace Heapwright.Core.Tests.BuildPlans;

/// <summary>A few materials with round figures (common practice, no source), for building with.</summary>
internal static class Garden
{
    public static readonly UnitSize Barrow = Container("wheelbarrow", 85);
    public static readonly UnitSize Bucket = Container("bucket", 12);
    public static readonly UnitSize Bag = Container("bag", 80);
    public static readonly UnitSize Bale = Container("bale", 400);
    public static readonly UnitSize Litre = MeasureUnits.Find("l")!;
    public static readonly UnitSize Kilogram = MeasureUnits.Find("kg")!;

    public static readonly Material Grass = Make(
        "grass",
        "grass",
        "leafy",
        "green",
        "fine",
        2.5,
        44,
        77,
        200,
        0
    );
    public static readonly Material Leaves = Make(
        "leaves",
        "leaves",
        "leafy",
        "brown",
        "medium",
        0.9,
        47,
        20,
        80,
        10,
        "soak_first"
    );
    public static readonly Material Straw = Make(
        "straw",
        "straw_hay",
        "stemmy",
        "brown",
        "coarse",
        0.5,
        45,
        12,
        50,
        40,
        "soak_first"
    );
    public static readonly Material Chips = Make(
        "chips",
        "woody",
        "woody",
        "structure",
        "coarse",
        0.2,
        50,
        40,
        290,
        95
    );
    public static readonly Material Manure = Make(
        "manure",
        "manure",
        "manure",
        "green",
        "coarse",
        1.5,
        42,
        66,
        360,
        25
    );
    public static readonly Material Scraps = Make(
        "scraps",
        "kitchen",
        "fruity",
        "green",
        "medium",
        2.5,
        45,
        80,
        425,
        2,
        "bury_in_middle"
    );
    public static readonly Material Coffee = Make(
        "coffee",
        "kitchen",
        "seedy",
        "green",
        "fine",
        2.2,
        50,
        62,
        550,
        0,
        "scatter_thinly"
    );
    public static readonly Material Soil = Make(
        "soil",
        "soil",
        "soily",
        "soil",
        "fine",
        0.2,
        3,
        20,
        1200,
        0,
        "scatter_thinly"
    );

    public static readonly ImmutableArray<Material> All =
    [
        Grass,
        Leaves,
        Straw,
        Chips,
        Manure,
        Scraps,
        Coffee,
        Soil,
    ];

    public static Ingredient Of(Material material, double amount, UnitSize unit) =>
        new()
        {
            Name = material.Name,
            Material = material,
            Properties = material.Properties,
            Amount = Spread.Exact(amount),
            Unit = unit,
        };

    public static Bin Box(double length, double width, double height) =>
        Bin.Box(Length.FromMeters(length), Length.FromMeters(width), Length.FromMeters(height));

    public static BuildPlan Build(Bin? bin, double? water, params Ingredient[] ingredients) =>
        BuildPlan.Of(
            new BuildQuestion
            {
                Ingredients = [.. ingredients],
                Bin = bin,
                Water = water is { } litres ? Volume.FromLiters(litres) : null,
            }
        );

    /// <summary>The heap a gardener might have on a Saturday.</summary>
    public static BuildPlan Saturday() =>
        Build(
            Box(1.2, 1.2, 1.1),
            30,
            Of(Grass, 2, Barrow),
            Of(Leaves, 4, Bag),
            Of(Chips, 1, Barrow),
            Of(Scraps, 2, Bucket),
            Of(Manure, 1, Barrow)
        );

    /// <summary>A full bay with more coarse stuff than the base takes.</summary>
    public static BuildPlan FullBay() =>
        Build(
            Box(1.2, 1.2, 1.1),
            90,
            Of(Grass, 4, Barrow),
            Of(Straw, 1, Bale),
            Of(Leaves, 4, Bag),
            Of(Chips, 3, Barrow),
            Of(Scraps, 3, Bucket),
            Of(Soil, 2, Bucket)
        );

    private static UnitSize Container(string name, double litres) =>
        UnitSize.OfVolume(name, Spread.Exact(litres), wholeByDefault: true);

    private static Material Make(
        string id,
        string group,
        string kind,
        string countsAs,
        string particle,
        double nitrogen,
        double carbon,
        double moisture,
        double density,
        double stiff,
        params string[] prepare
    ) =>
        new()
        {
            Id = id,
            Name = id,
            Group = group,
            Family = id,
            Kind = kind,
            State = "fresh",
            Freshness = "fresh",
            CountsAs = countsAs,
            Particle = particle,
            Prepare = [.. prepare],
            Properties = MaterialProperties
                .None.With(MaterialProperty.Nitrogen, Spread.Exact(nitrogen))
                .With(MaterialProperty.Carbon, Spread.Exact(carbon))
                .With(MaterialProperty.Moisture, Spread.Exact(moisture))
                .With(MaterialProperty.BulkDensity, Spread.Exact(density))
                .With(MaterialProperty.Ash, Spread.Exact(10))
                .With(MaterialProperty.Lignin, Spread.Exact(8))
                .With(MaterialProperty.StiffShare, Spread.Exact(stiff)),
        };
}
