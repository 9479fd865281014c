using Heapwright.Core.Mixtures;
using Heapwright.Core.Recipes;
using static Heapwright.Core.Tests.BuildPlans.Garden;

namespace Heapwright.Core.Tests.Recipes;

/// <summary>The order of measurements by gain over effort (weights 1, 1, 2, 4: our own estimate, no source).</summary>
public class MeasureEffortTests
{
    private static readonly Ingredient Mowings = Of(Grass, 3, Barrow);

    [Fact]
    public void Laboratory_GainingThreeTimesABucket_ComesAfterIt()
    {
        var ranked = MeasureEffort.Rank([Gain("lab", 0.12), Gain("bucket_weight", 0.04)]);

        Assert.Equal(["bucket_weight", "lab"], ranked.Select(g => g.Measure));
        Assert.Equal([0.04, 0.12], ranked.Select(g => g.ChanceGain));
        Assert.Equal("recipes.effort_bucket_weight", ranked[0].Why.Code);
        Assert.Equal("recipes.effort_lab_later", ranked[1].Why.Code);
    }

    [Fact]
    public void Laboratory_GainingFiveTimesABucket_ComesFirstAndSaysSo()
    {
        var ranked = MeasureEffort.Rank([Gain("bucket_weight", 0.02), Gain("lab", 0.1)]);

        Assert.Equal("lab", ranked[0].Measure);
        Assert.Equal("recipes.effort_lab_first", ranked[0].Why.Code);
        Assert.Equal(
            [10.0, 2.0],
            ranked[0].Why.Values.Cast<double>().Select(v => Math.Round(v, 9))
        );
    }

    // It gains less than four times as much as drying, but drying is twice the effort: the reason must fit the place.
    [Fact]
    public void Laboratory_BeforeDrying_SaysThatItComesFirst()
    {
        var ranked = MeasureEffort.Rank([Gain("oven_moisture", 0.0101), Gain("lab", 0.0246)]);

        Assert.Equal(["lab", "oven_moisture"], ranked.Select(g => g.Measure));
        Assert.Equal("recipes.effort_lab_first", ranked[0].Why.Code);
    }

    [Fact]
    public void Laboratory_Alone_SaysThatNothingAtHomeHelps() =>
        Assert.Equal(
            "recipes.effort_lab_alone",
            Assert.Single(MeasureEffort.Rank([Gain("lab", 0.04)])).Why.Code
        );

    [Fact]
    public void Squeeze_GainingAsMuchAsDrying_ComesFirst() =>
        Assert.Equal(
            ["squeeze", "oven_moisture"],
            MeasureEffort
                .Rank([Gain("oven_moisture", 0.05), Gain("squeeze", 0.03)])
                .Select(g => g.Measure)
        );

    [Fact]
    public void Measure_Unknown_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => MeasureEffort.Of("dowsing"));

    private static MeasureGain Gain(string measure, double gain) => new(Mowings, measure, gain);
}
