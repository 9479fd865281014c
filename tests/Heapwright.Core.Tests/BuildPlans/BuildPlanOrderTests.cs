using Heapwright.Core.BuildPlans;
using static Heapwright.Core.Tests.BuildPlans.Garden;

namespace Heapwright.Core.Tests.BuildPlans;

/// <summary>The order and thickness of layers: common practice, no source, unless named.</summary>
public class BuildPlanOrderTests
{
    [Fact]
    public void FullBay_FromTheGroundUp_BeginsCoarseAndEndsBrown()
    {
        var plan = FullBay();

        var first = plan.Layers[0];
        Assert.Equal(LayerRole.Base, first.Role);
        Assert.Equal(["chips"], first.Parts.Select(p => p.Ingredient.Name));
        Assert.InRange(first.Thickness.Centimeters, 10, 15);

        var last = plan.Layers[^1];
        Assert.Equal(LayerRole.Cover, last.Role);
        Assert.All(last.Parts, p => Assert.Equal("brown", p.Ingredient.Material!.CountsAs));
        Assert.InRange(last.Thickness.Centimeters, 10, 15);
    }

    [Fact]
    public void FullBay_ChipsLeftOverFromTheBase_GoThroughMoreThanOnePair()
    {
        var plan = FullBay();

        var pairsWithChips = plan.Layers.Count(l =>
            l.Role is LayerRole.Brown or LayerRole.Kitchen
            && l.Parts.Any(p => p.Ingredient.Name == "chips")
        );

        Assert.InRange(pairsWithChips, 3, 16);
    }

    [Fact]
    public void FullBay_Soil_LiesInThinDustings()
    {
        var plan = FullBay();

        var soil = plan.Layers.Where(l => l.Role == LayerRole.Soil).ToList();
        Assert.NotEmpty(soil);
        Assert.All(soil, l => Assert.InRange(l.Thickness.Centimeters, 0.1, 2));
    }

    [Fact]
    public void FullBay_GreensAndBrowns_Alternate()
    {
        var plan = FullBay();

        for (var i = 1; i < plan.Layers.Length; i++)
        {
            Assert.False(
                plan.Layers[i].Role == LayerRole.Green
                    && plan.Layers[i - 1].Role == LayerRole.Green,
                $"layers {i} and {i + 1} are both green"
            );
        }
    }

    [Fact]
    public void Saturday_Scraps_LieInTheMiddleThirdAwayFromTheSides()
    {
        var plan = Saturday();

        var layer = Assert.Single(plan.Layers, l => l.Parts.Any(p => p.InMiddle));
        Assert.True(layer.Bottom >= plan.Height / 3 * 0.999, $"begins at {layer.Bottom}");
        Assert.True(layer.Top <= plan.Height * 2 / 3 * 1.001, $"ends at {layer.Top}");
        Assert.Equal(25, plan.ScrapsMargin!.Value.Centimeters, 6);
        Assert.Null(plan.Layers.First(l => l.Number == layer.Number + 1).ForkWith);
    }

    [Fact]
    public void Saturday_LowOnThisFloor_SaysSoAndNamesASmallerOne()
    {
        var plan = Saturday();

        var note = Assert.Single(plan.Notes, n => n.Code == "buildplans.flat");
        // 2 × 85 + 4 × 80 + 85 + 2 × 12 + 85 = 684 l loose, filled 0.85 of it: 0.5814 m³, a cube of 0.8346 m.
        Assert.Equal(0.8346, ((UnitsNet.Length)note.Values[1]).Meters, 4);
    }

    [Fact]
    public void Water_Saturday_GoesToTheDryStuffAlone()
    {
        var plan = Saturday();

        Assert.All(
            plan.Layers.Where(l => l.Role == LayerRole.Green),
            l => Assert.Equal(0, l.Water.Liters)
        );
        Assert.True(
            plan.Layers.Where(l => l.Parts.Any(p => p.Ingredient.Name == "leaves"))
                .Sum(l => l.Water.Liters) > 15,
            "most of 30 l is for the leaves"
        );
    }

    [Fact]
    public void Height_AfterTwoAndAHalfWeeks_IsAQuarterLower()
    {
        // Settles a quarter in 2.5 weeks (practitioners' records, printed).
        var plan = FullBay();
        Assert.Equal(0.75, plan.SettledHeight / plan.Height, 6);
    }

    [Fact]
    public void VeryGrassyBay_KeepsToSixteenLayersAndSaysThatTheGrassLiesTooThick()
    {
        // 12 barrows of 85 l on 1 m² are 102 cm of grass: 21 layers of 5 cm.
        var plan = Build(Box(1, 1, 1.5), 0, Of(Grass, 12, Barrow), Of(Straw, 4, Barrow));

        Assert.InRange(plan.Layers.Length, 8, 16);
        var note = Assert.Single(plan.Notes, n => n.Code == "buildplans.too_grassy");
        var thickest = ((UnitsNet.Length)note.Values[0]).Centimeters;
        Assert.InRange(thickest, 5.1, 15);
        Assert.Equal(5, ((UnitsNet.Length)note.Values[1]).Centimeters);
        Assert.DoesNotContain(plan.Notes, n => n.Code == "buildplans.mix_first");
    }

    [Fact]
    public void ThinBrowns_AreForkedTogetherWithTheirGreens()
    {
        // A quarter bag (20 l) of leaves on 1.44 m² is 1.4 cm.
        var plan = Build(
            Box(1.2, 1.2, 1),
            20,
            Of(Chips, 2, Barrow),
            Of(Leaves, 1, Bag),
            Of(Straw, 2, Barrow),
            Of(Grass, 4, Barrow)
        );

        var pairs = plan.Layers.Where(l => l.Role == LayerRole.Pair).ToList();
        Assert.NotEmpty(pairs);
        Assert.All(
            pairs,
            l =>
            {
                Assert.Contains(l.Parts, p => p.Ingredient.Material!.CountsAs == "green");
                Assert.Contains(l.Parts, p => p.Ingredient.Material!.CountsAs != "green");
                Assert.Null(l.ForkWith);
                Assert.Equal("buildplans.why_pair", l.Why.Code);
            }
        );
    }

    [Fact]
    public void Alone_Grass_IsLaidThinAndWarnedOf()
    {
        var plan = Build(Box(1, 1, 1), 0, Of(Grass, 6, Barrow));

        Assert.All(plan.Layers, l => Assert.InRange(l.Thickness.Centimeters, 0.1, 5));
        Assert.Contains(plan.Notes, n => n.Code == "buildplans.alone_grass");
        Assert.True(plan.SettledHeight < plan.Height * 0.7, "grass slumps");
    }

    [Fact]
    public void Alone_OneBucket_IsOneLayer()
    {
        var plan = Build(Box(1, 1, 1), null, Of(Straw, 1, Bucket));

        Assert.Single(plan.Layers);
        Assert.Contains(plan.Notes, n => n.Code == "buildplans.too_small");
    }

    [Fact]
    public void Bin_TooNarrowForScraps_SaysWhatToDo()
    {
        var plan = Build(Box(0.45, 0.45, 0.9), null, Of(Scraps, 2, Bucket), Of(Leaves, 2, Bag));

        Assert.Contains(plan.Notes, n => n.Code == "buildplans.scraps_bin_narrow");
        Assert.True(plan.ScrapsMargin!.Value.Centimeters < 25);
    }

    [Fact]
    public void Bin_LittleTooSmall_IsTroddenInToItsHeight()
    {
        // 1,200 l loose fill 1,020 l of a bay of 1,000.
        var plan = Build(Box(1, 1, 1), 0, Of(Manure, 600, Litre), Of(Leaves, 600, Litre));

        Assert.Equal(100, plan.Height.Centimeters, 6);
        Assert.Contains(plan.Notes, n => n.Code == "buildplans.trodden");
        Assert.Empty(plan.LeftOver);
    }

    [Fact]
    public void Bin_FarTooSmall_LeavesTheRestOver()
    {
        var plan = Build(Box(1, 1, 1), 100, Of(Manure, 12, Barrow), Of(Straw, 3, Bale));

        Assert.True(plan.Height.Centimeters <= 100.0001);
        Assert.NotEmpty(plan.LeftOver);
        Assert.Equal("buildplans.left_over", plan.Notes[0].Code);
    }

    [Fact]
    public void Bin_None_IsAFloorThatSuits()
    {
        // 1,176 l loose fill 1 m³: a cube of one metre.
        var plan = Build(
            null,
            0,
            Of(Manure, 1000 / 0.85 / 2, Litre),
            Of(Leaves, 1000 / 0.85 / 2, Litre)
        );

        Assert.Equal(1, plan.Bin.Width.Meters, 3);
        Assert.Equal(1, plan.Height.Meters, 3);
        Assert.Contains(plan.Assumptions, n => n.Code == "buildplans.bin_assumed");
    }

    [Fact]
    public void Layers_TallerHeap_HasMoreOfThem()
    {
        BuildPlan Of2(double times) =>
            Build(
                Box(1.2, 1.2, 1.2),
                0,
                Of(Grass, times, Barrow),
                Of(Straw, 2 * times, Barrow),
                Of(Leaves, times, Barrow)
            );

        Assert.True(Of2(4).Layers.Length > Of2(1).Layers.Length);
        Assert.InRange(Of2(1).Layers.Length, 4, 16);
        Assert.InRange(Of2(4).Layers.Length, 4, 16);
    }

    [Fact]
    public void Amount_NoneAboveZero_IsRefused() =>
        Assert.Throws<ArgumentException>(() => Build(Box(1, 1, 1), 0, Of(Grass, 0, Barrow)));
}
