using Heapwright.App.Contract;

namespace Heapwright.App.Tests.Contract;

/// <summary>The command <c>mix</c> and what every question has in common, as the contract has them.</summary>
public class MixAnswersTests
{
    private const string Grass =
        "\"carbon_pct_db\":45,\"nitrogen_pct_db\":2.4,\"moisture_pct_wb\":77,\"bulk_density_kg_m3\":200";

    [Fact]
    public void FilledVolume_OfOneStuffAndNothingOfAnother_IsItsLooseVolume()
    {
        var answer = Ask(
            $$"""{"ingredients":[{"name":"aa stuff","amount":{"value":10,"unit":"kg"},{{Grass}} },{"name":"bb stuff","amount":{"value":0,"unit":"kg"},{{Grass}} }]}"""
        );

        // 10 kg at 200 kg/m3.
        Assert.Equal(50, answer.Json.Typical("volume_l"), 1e-9);
        Assert.Equal(50, answer.Json.Typical("filled_volume_l"), 1e-9);
    }

    [Fact]
    public void SettledAir_OfWhatIsTightFromTheStart_IsNotCalledAiryOnTheDay()
    {
        var answer = Ask(
            """{"ingredients":[{"material":"cattle_slurry","amount":{"value":100,"unit":"l"}}]}"""
        );

        var why = answer.Json["verdicts"]!
            .AsArray()
            .Single(v => v!["quantity"]!.GetValue<string>() == "free_air_space_settled_pct")![
            "why"
        ]!.GetValue<string>();
        Assert.DoesNotContain("Airy", why, StringComparison.Ordinal);
        Assert.Contains("too tight", why, StringComparison.Ordinal);
    }

    [Fact]
    public void Refusal_OfAFieldThatStandsTwice_NamesIt() =>
        Assert.Contains(
            "the field \"water_l\" stands twice",
            Asking.Refusal("""{"water_l":1,"water_l":2}""", i => MixAnswers.Answer(i)),
            StringComparison.Ordinal
        );

    [Fact]
    public void Refusal_OfDeepNesting_SaysSo() =>
        Assert.Contains(
            "is nested more than 32 levels deep",
            Asking.Refusal(new string('[', 100) + new string(']', 100), i => MixAnswers.Answer(i)),
            StringComparison.Ordinal
        );

    [Fact]
    public void Refusal_OfANumberTooLargeToHold_CallsItOutOfRange() =>
        Assert.Contains(
            "water_l: 1e400 is out of range; 0 to 1000000 is allowed",
            Asking.Refusal(
                $$"""{"ingredients":[{"amount":{"value":1,"unit":"kg"},{{Grass}} }],"water_l":1e400}""",
                i => MixAnswers.Answer(i)
            ),
            StringComparison.Ordinal
        );

    [Fact]
    public void Refusal_OfSeveralMissingProperties_NamesThemAsSeveral() =>
        Assert.Contains(
            "carbon_pct_db, nitrogen_pct_db and moisture_pct_wb are missing; give them",
            Asking.Refusal(
                """{"ingredients":[{"amount":{"value":1,"unit":"kg"}}]}""",
                i => MixAnswers.Answer(i)
            ),
            StringComparison.Ordinal
        );

    private static Answer Ask(string json) => MixAnswers.Answer(Asking.Of(json));
}
