using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.App.Tests.Contract;

/// <summary>The command <c>recipe</c> as the contract has it.</summary>
public class RecipeAnswersTests
{
    private const string Have = """
        "have":[{"material":"grass_clippings_fresh","amount":{"value":4,"unit":"wheelbarrow"}},
        {"material":"leaves_mixed_dry","amount":{"value":6,"unit":"wheelbarrow"}},
        {"material":"horse_manure_straw","amount":{"value":3,"unit":"wheelbarrow"}},
        {"material":"wood_chips_coarse","amount":{"value":2,"unit":"wheelbarrow"}}]
        """;

    // Where moisture is no condition, or has one end only, the water is that which makes a heap as moist as is usual,
    // not whatever the conditions still allow.
    [Theory]
    [InlineData(
        """{"carbon_nitrogen_ratio":null,"moisture_pct_wb":null,"free_air_space_pct":null}"""
    )]
    [InlineData("""{"moisture_pct_wb":null}""")]
    [InlineData("""{"moisture_pct_wb":{"low":null,"high":null}}""")]
    [InlineData("""{"carbon_nitrogen_ratio":{"low":29.9,"high":30.1}}""")]
    [InlineData("""{"moisture_pct_wb":{"low":null,"high":70}}""")]
    public void Plan_WithMoistureOpen_IsWateredAsUsual(string bands)
    {
        var plan = First(Ask($$"""{ {{Have}},"bands":{{bands}} }"""));

        // The stuff as it is, without any water, is between 56 and 62 % moist.
        Assert.InRange(plan["mixture"]!.Typical("moisture_pct_wb"), 50, 65);
        Assert.InRange(plan.Typical("water_l"), 0, 20);
    }

    [Fact]
    public void Plan_WithALeastMoistureOnly_IsWateredUpToIt()
    {
        var plan = First(
            Ask($$"""{ {{Have}},"bands":{"moisture_pct_wb":{"low":65,"high":null} } }""")
        );

        Assert.InRange(plan["mixture"]!.Typical("moisture_pct_wb"), 65, 72);
    }

    [Fact]
    public void Plan_WithStuffThatShouldNeverGoIn_LeavesItOutAndSaysSo()
    {
        var answer = Ask(
            $$"""{ {{Have[..^1]}},{"material":"treated_wood","amount":{"value":2,"unit":"wheelbarrow"} }] }"""
        );

        foreach (var plan in answer.Json["plans"]!.AsArray())
        {
            Assert.DoesNotContain(
                plan!["use"]!.AsArray(),
                u => (string?)u!["material"] == "treated_wood"
            );
            Assert.Contains(
                plan.AsObject().Texts("notes"),
                n => n.Contains("should never go into a heap", StringComparison.Ordinal)
            );
        }
    }

    [Theory]
    [InlineData(
        """{"material":"treated_wood","amount":{"value":2,"unit":"wheelbarrow"},"must_use":true},{"material":"grass_clippings_fresh","amount":{"value":4,"unit":"wheelbarrow"}}""",
        "must be used, but should never go into a heap"
    )]
    [InlineData(
        """{"material":"treated_wood","amount":{"value":2,"unit":"wheelbarrow"}}""",
        "nothing that is listed may go into a heap"
    )]
    public void Plan_OfNothingElse_IsRefused(string have, string sentence) =>
        Assert.Contains(
            sentence,
            Assert.Throws<InputProblem>(() => Ask($$"""{"have":[{{have}}]}""")).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Plan_OfMoreThanTheRoomThatMustBeUsed_SaysSo()
    {
        var answer = Ask(
            """{"have":[{"material":"grass_clippings_fresh","amount":{"value":40,"unit":"wheelbarrow"},"must_use":true}],"volume_m3":{"low":0.5,"high":1}}"""
        );

        Assert.False(answer.Yes);
        Assert.Contains(
            First(answer).Texts("notes"),
            n => n.Contains("there is room for 1,000 L at most", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Plan_SpreadOverAWideFloor_IsSaidNotToHeat()
    {
        var answer = Ask(
            $$"""{ {{Have}},"bin":{"shape":"box","length_m":100,"width_m":100,"height_m":1} }"""
        );

        Assert.False(answer.Yes);
        Assert.Equal("no", First(answer)["expect"]!["heats"]!.GetValue<string>());
    }

    private static JsonNode First(Answer answer) => answer.Json["plans"]!.AsArray()[0]!;

    private static Answer Ask(string json) => RecipeAnswers.Answer(Asking.Of(json));
}
