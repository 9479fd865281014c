using Heapwright.Core.Diagnosis;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Tests.Diagnosis;

/// <summary>Numbers between words, the course of readings, and amounts by the balance of water.</summary>
public class NumbersAndCourseTests
{
    private static readonly SignModel Model = new(
        [
            SmallModel.Cause("young", CauseGroup.Fault, 0.5),
            SmallModel.Cause("reading_misleads", CauseGroup.Fault, 0.05),
            SmallModel.Cause("normal_hot", CauseGroup.Stage, 0),
        ],
        [
            SmallModel.Row("stage", "normal_hot", "*", SignEffect.Often, 1),
            SmallModel.Row("heat", "cold", "*", SignEffect.Often, 1),
            SmallModel.Row("age", "d1", "*", SignEffect.Often, 0.5),
            SmallModel.Row("age", "d100", "*", SignEffect.Often, 0.5),
            SmallModel.Row("age", "d1", "young", SignEffect.Times, 1e6),
        ],
        []
    );

    [Theory]
    [InlineData(0.01, 1, 0.5)] // below the first word it counts as the first
    [InlineData(1, 1, 0.5)]
    [InlineData(10, 0.5, 0.5)] // half way on a scale of logarithms
    [InlineData(100, 0, 0.5)]
    [InlineData(9999, 0, 0.5)]
    public void A_number_belongs_to_the_words_beside_it_in_part(
        double days,
        double young,
        double old
    )
    {
        var fact = NumberFacts.Of(Model.Field("age"), days, inLogs: true);
        var chance = new Diagnoser(Model, [fact])
            .Answer([])
            .Causes.Single(c => c.Cause.Id == "young")
            .Probability;
        Assert.Equal(young / (young + old), chance, 5);
    }

    [Fact]
    public void An_exact_spread_is_the_number_itself()
    {
        var exact = NumberFacts.Of(Model.Field("age"), Spread.Exact(10), inLogs: true);
        var number = NumberFacts.Of(Model.Field("age"), 10, inLogs: true);
        Assert.Equal(
            new Diagnoser(Model, [number]).Answer([]).Causes[0].Probability,
            new Diagnoser(Model, [exact]).Answer([]).Causes[0].Probability,
            10
        );
    }

    [Theory]
    [InlineData("rising", 20.0, 35.0, 50.0)]
    [InlineData("fell", 30.0, 60.0, 45.0)]
    [InlineData("fell", 62.0, 55.0, 41.0)]
    [InlineData("fell_low", 20.0, 42.0, 30.0)]
    [InlineData("flat_low", 18.0, 20.0, 19.0)]
    [InlineData("flat_warm", 41.0, 43.0, 42.0)]
    [InlineData("flat_hot", 60.0, 63.0, 61.0)]
    public void Readings_have_a_course(string course, double first, double then, double last)
    {
        HeatTold[] told =
        [
            .. new[] { first, then, last }.Select((c, d) => new HeatTold(d, c, "core", 0)),
        ];
        Assert.Equal(course, HeatCourse.Trend(told));
    }

    [Fact]
    public void Water_is_the_balance_of_moisture()
    {
        // 1 m³ with 130 kg of dry matter, from 42 to 57 % water: 130 * (57/43 - 42/58).
        var water = RepairAmount.Water(Spread.Exact(1), "dry")!.Litres;
        Assert.Equal(130 * ((57.0 / 43) - (42.0 / 58)), water.Typical, 9);
        Assert.Null(RepairAmount.Water(Spread.Exact(1), "sponge"));
        Assert.Null(RepairAmount.DryLeaves(Spread.Exact(1), "sponge"));
        Assert.True(
            RepairAmount.DryLeaves(Spread.Exact(1), "streams")!.Litres.Typical
                > RepairAmount.DryLeaves(Spread.Exact(1), "drips")!.Litres.Typical
        );
    }

    [Fact]
    public void Dry_leaves_take_up_the_water_above_what_a_heap_may_hold()
    {
        // After mixing: water of the heap and the leaves over their dry matter is 62 : 38.
        var leaves = RepairAmount.DryLeaves(Spread.Exact(1), "drips")!.Litres.Typical / 1000 * 50;
        var water = (130 * 67.0 / 33) + (leaves * 15.0 / 85);
        Assert.Equal(62.0 / 38, water / (130 + leaves), 9);
    }
}
