using Heapwright.Core.Materials;
using Heapwright.Core.Materials.Stock;

namespace Heapwright.Core.Tests.Materials.Stock;

public class StockAgeTests
{
    [Fact]
    public void Grass_TwoDays_HasFermented()
    {
        var grass = Spoiling("ferments", 1);
        var aged = StockAge.After(grass, 2);
        Assert.True(aged.Spoiled);
        Assert.Equal(0, aged.DaysLeft);
        Assert.Equal("materials.ferments_done", aged.Reasons[0].Code);
        Assert.True(Typical(aged, MaterialProperty.Fast) < 14);
        Assert.True(Typical(aged, MaterialProperty.BulkDensity) > 80);
    }

    [Fact]
    public void Grass_SixHours_WarnsBeforehand()
    {
        var aged = StockAge.After(Spoiling("ferments", 1), 0.25);
        Assert.False(aged.Spoiled);
        Assert.Equal(0.75, aged.DaysLeft);
        Assert.Equal("materials.ferments_soon", aged.Reasons[0].Code);
    }

    // Published: 20 to 60 % of the nitrogen of manures is commonly lost (several papers, from memory).
    [Fact]
    public void Manure_Months_LosesTwentyToSixtyPercentOfItsNitrogen()
    {
        var aged = StockAge.After(Spoiling("loses_nitrogen", 21), 200);
        var nitrogen = aged.Material.Properties[MaterialProperty.Nitrogen]!.Value;
        Assert.InRange(nitrogen.Typical / 0.9, 0.4, 0.8);
        Assert.InRange(nitrogen.Low / 0.6, 0.38, 0.42);
        // Wider than before, and never more than there was.
        Assert.True(nitrogen.High / nitrogen.Low > 1.4 / 0.6);
        Assert.True(nitrogen.High <= 1.4);
    }

    [Fact]
    public void Leaves_NotSaidHowKept_MayBeWetOrDry()
    {
        var aged = StockAge.After(Spoiling("gets_wet", null), 60);
        var moisture = aged.Material.Properties[MaterialProperty.Moisture]!.Value;
        Assert.Equal(10, moisture.Low);
        Assert.InRange(moisture.High, 70, 76);
        Assert.InRange(moisture.Typical, 25, 50);
        Assert.Contains(aged.Reasons, r => r.Code is "materials.kept_how");
        Assert.True(aged.Material.Properties[MaterialProperty.BulkDensity]!.Value.High > 130);
    }

    [Fact]
    public void Leaves_Covered_StayAsTheyWere()
    {
        var leaves = Spoiling("gets_wet", null);
        var aged = StockAge.After(leaves, 60, Keeping.Covered);
        Assert.Equal(leaves.Properties, aged.Material.Properties);
        Assert.Empty(aged.Reasons);
    }

    [Fact]
    public void Leaves_Open_AreWetterThanUnknown()
    {
        var leaves = Spoiling("gets_wet", null);
        Assert.True(
            Typical(StockAge.After(leaves, 30, Keeping.Open), MaterialProperty.Moisture)
                > Typical(StockAge.After(leaves, 30), MaterialProperty.Moisture)
        );
    }

    [Fact]
    public void Bread_PastItsTime_IsMouldyAndCarriesTheCaution()
    {
        var aged = StockAge.After(Spoiling("moulds", 5), 9);
        Assert.Contains("dust_mould", aged.Material.Cautions);
        Assert.Equal("materials.moulds_done", aged.Reasons[0].Code);
    }

    [Fact]
    public void Compost_DryingOut_LowEndFalls()
    {
        var aged = StockAge.After(Spoiling("dries_out", null), 60);
        var moisture = aged.Material.Properties[MaterialProperty.Moisture]!.Value;
        Assert.True(moisture.Low < 6);
        Assert.True(moisture.Typical < 20);
        Assert.Equal(40, moisture.High);
    }

    [Fact]
    public void Sand_Keeps()
    {
        var aged = StockAge.After(Spoiling("", null), 500);
        Assert.Null(aged.DaysLeft);
        Assert.False(aged.Spoiled);
        Assert.Equal("materials.keeps", Assert.Single(aged.Reasons).Code);
    }

    [Fact]
    public void AnyMaterial_DayZero_IsUnchanged()
    {
        foreach (
            var how in (string[])
                ["", "ferments", "loses_nitrogen", "gets_wet", "moulds", "dries_out"]
        )
        {
            var material = Spoiling(how, 5);
            Assert.Equal(material, StockAge.After(material, 0).Material);
        }
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(4000)]
    public void After_ImpossibleDays_IsRefused(double days) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            StockAge.After(Spoiling("ferments", 1), days)
        );

    private static double Typical(AgedMaterial aged, MaterialProperty property) =>
        aged.Material.Properties[property]!.Value.Typical;

    private static Material Spoiling(string how, double? days) =>
        Stuff.Of() with
        {
            SpoilsHow = how,
            SpoilsInDays = days,
        };
}
