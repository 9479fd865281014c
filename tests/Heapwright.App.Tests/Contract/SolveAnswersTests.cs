using Heapwright.App.Contract;

namespace Heapwright.App.Tests.Contract;

/// <summary>The command <c>solve</c> as the contract has it.</summary>
public class SolveAnswersTests
{
    private const string Grass =
        "\"carbon_pct_db\":45,\"nitrogen_pct_db\":2.4,\"moisture_pct_wb\":77";
    private const string Leaves =
        "\"carbon_pct_db\":50,\"nitrogen_pct_db\":0.75,\"moisture_pct_wb\":35";

    [Fact]
    public void SecondMass_ForARatioOfUnnamedStuff_AssumesNothingOfAshOrStiffness()
    {
        var answer = Ask(
            $$"""{"find":"mass_of_second","for":"carbon_nitrogen_ratio","target":30,"first":{"mass_kg":10,{{Grass}} },"second":{ {{Leaves}} } }"""
        );

        // 3.5 kg: Cornell Composting, C/N Ratio (from memory).
        Assert.Equal(3.5, answer.Json.Typical("mass_kg"), 0.05);
        Assert.Empty(answer.Json.Texts("assumptions"));
    }

    [Fact]
    public void SecondMass_OfARange_SaysThatItsTypicalValueIsUsed()
    {
        var answer = Ask(
            """{"find":"mass_of_second","for":"moisture_pct_wb","target":60,"first":{"mass_kg":10,"moisture_pct_wb":{"low":70,"typical":77,"high":80}},"second":{"moisture_pct_wb":35}}"""
        );

        // 6.8 kg: Cornell Composting, Moisture content (printed).
        Assert.Equal(6.8, answer.Json.Typical("mass_kg"), 0.05);
        Assert.Contains(
            "of every range the typical value is used",
            Assert.Single(answer.Json.Texts("assumptions")),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("fixed", "[]")]
    [InlineData("target_moisture_pct_wb", "60")]
    public void SecondMass_WithAFieldOfAnotherQuestion_IsRefused(string field, string value)
    {
        var refusal = Asking.Refusal(
            $$"""{"find":"mass_of_second","for":"moisture_pct_wb","target":60,"{{field}}":{{value}},"first":{"mass_kg":10,{{Grass}} },"second":{ {{Leaves}} } }""",
            i => SolveAnswers.Answer(i)
        );

        Assert.Contains($"\"mass_of_second\" has no {field}", refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoUnknowns_NamedByTheIdOfAMaterial_AreAsWithAnObject()
    {
        string With(string unknown) =>
            $$"""{"find":"two_unknowns","targets":{"carbon_nitrogen_ratio":30,"moisture_pct_wb":55},"fixed":[{"mass_kg":50,"carbon_pct_db":56,"nitrogen_pct_db":0.7,"moisture_pct_wb":12}],"unknown":[{{unknown}},"water"]}""";

        Assert.Equal(
            Ask(With("{\"material\":\"hen_manure_fresh\"}")).Json.ToJsonString(),
            Ask(With("\"hen_manure_fresh\"")).Json.ToJsonString()
        );
        Assert.Contains(
            "\"hen_manur\" is no material of the library",
            Asking.Refusal(With("\"hen_manur\""), i => SolveAnswers.Answer(i)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void TwoUnknowns_OnlyOneGiven_SaysThatExactlyTwoAreAllowed() =>
        Assert.Contains(
            "unknown: has 1 entry; exactly 2 are allowed",
            Asking.Refusal(
                """{"find":"two_unknowns","targets":{"carbon_nitrogen_ratio":30,"moisture_pct_wb":55},"fixed":[{"mass_kg":50,"carbon_pct_db":56,"nitrogen_pct_db":0.7,"moisture_pct_wb":12}],"unknown":["water"]}""",
                i => SolveAnswers.Answer(i)
            ),
            StringComparison.Ordinal
        );

    private static Answer Ask(string json) => SolveAnswers.Answer(Asking.Of(json));
}
