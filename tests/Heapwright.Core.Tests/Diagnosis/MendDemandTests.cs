using Heapwright.Core.Amounts;
using Heapwright.Core.Diagnosis;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Tests.Diagnosis;

/// <summary>
/// How much it takes to mend a heap, against sums done by hand. The heap has 130 (90 to 190) kg of dry matter in a cubic
/// metre; the stuff is known exactly, so that the answer is 130/90/190 times a number. Tolerance: one percent, for a
/// percentile of 256 points.
/// </summary>
public class MendDemandTests
{
    private const double Tolerance = 0.01;

    private static readonly HeapToMend CubicMetre = new()
    {
        VolumeM3 = Spread.Exact(1),
        Container = "bay",
    };

    // 100 litres at 60 kg/m³: 6 kg, of which 15 % (0.9 kg) is water and 5.1 kg dry; 48 % C, 0.9 % N.
    private static readonly Ingredient Leaves = Stuff(
        Barrow,
        density: 60,
        moisture: 15,
        carbon: 48,
        nitrogen: 0.9
    );

    // A litre at 200 kg/m³: 0.2 kg, of which 77 % is water and 0.046 kg dry; 45 % C, 3 % N.
    private static readonly Ingredient Grass = Stuff(
        MeasureUnits.Find("l")!,
        density: 200,
        moisture: 77,
        carbon: 45,
        nitrogen: 3
    );

    private static UnitSize Barrow =>
        UnitSize.OfVolume("barrow", Spread.Exact(100), wholeByDefault: true);

    [Fact]
    public void Streaming_heap_takes_as_many_barrows_of_dry_leaves_as_hold_its_water()
    {
        // From 74 to 62 % water: 74/26 - 62/38 = 2.84615 - 1.63158 = 1.21457 kg of water over in a kg of dry matter.
        // A barrow takes 5.1 * 1.63158 - 0.9 = 7.42106 kg.
        // 130 * 1.21457 / 7.42106 = 21.28; with 90 kg 14.73, with 190 kg 31.10 barrows.
        var needed = Demand(MendPurpose.DryUp, CubicMetre with { Squeeze = "streams" })
            .UnitsOf(Leaves)!
            .Value;

        Near(14.73, needed.Low);
        Near(21.28, needed.Typical);
        Near(31.10, needed.High);
    }

    [Fact]
    public void Heap_short_of_nitrogen_takes_greens_down_to_35_to_1()
    {
        // 130 kg with 45 % C at 60 to 1: 58.5 kg C, 0.975 kg N. At 35 to 1 that N carries 34.125 kg C: 24.375 kg over.
        // A litre of grass: 0.0207 kg C, 0.00138 kg N, which carries 0.0483: 0.0276 kg to spare.
        // 24.375 / 0.0276 = 883.2 litres; check: (58.5 + 18.282) / (0.975 + 1.2188) = 35.0.
        var needed = Demand(MendPurpose.BringNitrogen, Mixed(60)).UnitsOf(Grass)!.Value;

        Near(883.2, needed.Typical);
        Near(883.2 * 90 / 130, needed.Low);
        Near(883.2 * 190 / 130, needed.High);
    }

    [Fact]
    public void Heap_with_too_much_nitrogen_takes_browns_up_to_25_to_1()
    {
        // 58.5 kg C at 18 to 1: 3.25 kg N, which at 25 to 1 carries 81.25 kg C: 22.75 kg wanting.
        // A barrow of leaves: 2.448 kg C, 0.0459 kg N, which carries 1.1475: 1.3005 kg to spare.
        // 22.75 / 1.3005 = 17.49 barrows; check: (58.5 + 42.82) / (3.25 + 0.8028) = 25.0.
        var needed = Demand(MendPurpose.BindNitrogen, Mixed(18)).UnitsOf(Leaves)!.Value;

        Near(17.49, needed.Typical);
    }

    [Fact]
    public void Cover_is_a_hand_deep_layer_on_the_top_of_a_box_and_on_the_whole_of_an_open_heap()
    {
        // Box of 1 m³: 1 m² on top, 10 cm deep: 100 litres, one barrow. A cone of 1 m³ has about 4.5 m²: 450 litres.
        // The two unknowns, 0.85 to 1.3 m² and 8 to 15 cm, have medians at 1 and 10; that of the product is near.
        var box = Demand(MendPurpose.Cover, CubicMetre).UnitsOf(Leaves)!.Value.Typical;
        var cone = Demand(MendPurpose.Cover, CubicMetre with { Container = "open" })
            .UnitsOf(Leaves)!
            .Value.Typical;

        Assert.InRange(box, 0.95, 1.12);
        Assert.InRange(cone, 4.3, 5.1);
        // Eight times the volume has four times the surface.
        var eight = CubicMetre with
        {
            VolumeM3 = Spread.Exact(8),
        };
        Near(4 * box, Demand(MendPurpose.Cover, eight).UnitsOf(Leaves)!.Value.Typical);
    }

    [Fact]
    public void What_is_not_known_of_the_heap_is_said()
    {
        var nothing = new HeapToMend();
        Assert.Equal(MendGap.Size, Demand(MendPurpose.DryUp, nothing).Gap);
        Assert.Equal(MendGap.Size, Demand(MendPurpose.Cover, nothing).Gap);
        Assert.Equal(MendGap.Squeeze, Demand(MendPurpose.DryUp, CubicMetre).Gap);
        Assert.Equal(MendGap.Contents, Demand(MendPurpose.BringNitrogen, CubicMetre).Gap);
        Assert.Equal(
            MendGap.Shape,
            Demand(MendPurpose.Cover, CubicMetre with { Container = "windrow" }).Gap
        );
        Assert.Null(Demand(MendPurpose.DryUp, nothing).UnitsOf(Leaves));
    }

    [Fact]
    public void What_is_in_order_wants_nothing()
    {
        Assert.Equal(
            MendGap.NothingWanted,
            Demand(MendPurpose.DryUp, CubicMetre with { Squeeze = "sponge" }).Gap
        );
        Assert.Equal(MendGap.NothingWanted, Demand(MendPurpose.BringNitrogen, Mixed(30)).Gap);
        Assert.Equal(MendGap.NothingWanted, Demand(MendPurpose.BindNitrogen, Mixed(30)).Gap);
    }

    [Fact]
    public void What_is_wet_itself_or_no_richer_is_useless()
    {
        var wet = Stuff(Barrow, density: 300, moisture: 70, carbon: 48, nitrogen: 0.9);
        Assert.Null(Demand(MendPurpose.DryUp, CubicMetre with { Squeeze = "drips" }).UnitsOf(wet));
        // Leaves have 53 parts carbon to 1 of nitrogen: more of them bring no heap down to 35.
        Assert.Null(Demand(MendPurpose.BringNitrogen, Mixed(60)).UnitsOf(Leaves));
        Assert.Null(Demand(MendPurpose.BindNitrogen, Mixed(18)).UnitsOf(Grass));
    }

    [Fact]
    public void A_word_for_a_size_gives_a_range_and_none_where_it_has_no_end()
    {
        var medium = Demand(
                MendPurpose.DryUp,
                new HeapToMend { VolumeM3 = HeapToMend.VolumeOf("medium"), Squeeze = "streams" }
            )
            .UnitsOf(Leaves)!
            .Value;

        // 0.9 m³ in the middle: 0.9 * 21.28. The ends in logs: the distances of volume and dry matter add as squares:
        // below, ln(0.9/0.4) = 0.811 and ln(130/90) = 0.368 make 0.890: 19.15 / 2.436 = 7.86 barrows.
        Assert.InRange(medium.Typical, 19.15 * 0.9, 19.15 * 1.1);
        Assert.InRange(medium.Low, 7.86 * 0.85, 7.86 * 1.15);
        Assert.True(medium.High > 31.10);
        Assert.Null(HeapToMend.VolumeOf("tractor_size"));
    }

    [Fact]
    public void No_more_is_taken_than_there_is()
    {
        var some = new MendPart(Leaves with { Amount = Spread.Exact(3) }, Spread.Of(1, 2, 4));
        Assert.True(some.IsEnough);
        Assert.Equal(Spread.Of(1, 2, 3), some.Take);
        Assert.Equal(1, some.MayBeWanting);
        Assert.Equal(0, some.Wanting);

        // One of two barrows and five of 20 litres: a half and a quarter of what it takes.
        var few = some with
        {
            Stuff = Leaves with { Amount = Spread.Exact(1) },
        };
        var litres = new MendPart(Grass with { Amount = Spread.Exact(5) }, Spread.Of(10, 20, 40));
        Assert.False(few.IsEnough);
        Assert.Equal(1, few.Wanting);
        Assert.Equal(0.75, MendPart.Together([few, litres]), 12);
    }

    private static MendDemand Demand(MendPurpose purpose, HeapToMend heap) =>
        MendDemand.Of(purpose, heap, seed: 1);

    private static HeapToMend Mixed(double ratio) =>
        CubicMetre with
        {
            CarbonNitrogenRatio = Spread.Exact(ratio),
            CarbonPercent = Spread.Exact(45),
        };

    private static Ingredient Stuff(
        UnitSize unit,
        double density,
        double moisture,
        double carbon,
        double nitrogen
    ) =>
        new()
        {
            Name = "stuff",
            Properties = MaterialProperties
                .None.With(MaterialProperty.BulkDensity, Spread.Exact(density))
                .With(MaterialProperty.Moisture, Spread.Exact(moisture))
                .With(MaterialProperty.Carbon, Spread.Exact(carbon))
                .With(MaterialProperty.Nitrogen, Spread.Exact(nitrogen)),
            Amount = Spread.Exact(1),
            Unit = unit,
        };

    private static void Near(double expected, double actual) =>
        Assert.InRange(actual, expected * (1 - Tolerance), expected * (1 + Tolerance));
}
