using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Texts;

namespace Heapwright.App.Tests.Diagnosis;

/// <summary>An answer to "did it help?" counts at the next reading of the signs (ratios: data/signs/outcomes.csv).</summary>
public class TriedRemedyTests
{
    private const string Dry =
        """{"worry": ["not_heating"], "signs": {"squeeze": {"core": "dry"}}}""";

    [Fact]
    public void Tried_NoHelp_LowersTheOddsByTheRatioOfTheTable()
    {
        var before = Odds(Ask(Dry), "too_dry");
        var after = Odds(Ask(Dry, new TriedRemedy("too_dry", "no", 5)), "too_dry");
        // outcomes.csv: no, 0.33.
        Assert.InRange(after / before, 0.329, 0.331);
    }

    [Fact]
    public void Tried_NoHelp_IsSaidAgainstTheCauseAndForNoOther()
    {
        var answer = Ask(Dry, new TriedRemedy("too_dry", "no", 5));
        Assert.Contains(
            "what was done against \"Too dry\" did not help",
            Texts(Cause(answer, "too_dry"), "against")
        );
        Assert.DoesNotContain(
            Texts(Cause(answer, "too_dry"), "because"),
            f => f.Contains("did not help", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Tried_HelpedAndTroubledAgain_RaisesTheOdds()
    {
        var before = Odds(Ask(Dry), "too_dry");
        var after = Odds(Ask(Dry, new TriedRemedy("too_dry", "yes", 5)), "too_dry");
        // outcomes.csv: yes, 1.5.
        Assert.InRange(after / before, 1.499, 1.501);
    }

    [Theory]
    [InlineData("""{"signs": {"see": ["steam"]}}""", "yes", 5)]
    [InlineData("""{"worry": ["none"]}""", "yes", 5)]
    [InlineData(Dry, "no", 22)]
    [InlineData(Dry, "cannot_tell", 1)]
    public void Tried_HelpedAndNoTroubleOrTooLongAgoOrNotKnown_ChangesNothing(
        string question,
        string word,
        double daysAgo
    ) =>
        Assert.Equal(
            Ask(question).ToJsonString(),
            Ask(question, new TriedRemedy("too_dry", word, daysAgo)).ToJsonString()
        );

    [Fact]
    public void Tried_InGerman_IsSaidInGerman()
    {
        using var german = Languages.Use("de");
        var answer = Ask(Dry, new TriedRemedy("too_dry", "no", 5));
        Assert.Contains(
            Texts(Cause(answer, "too_dry"), "against"),
            f =>
                f.StartsWith("was gegen „", StringComparison.Ordinal)
                && f.EndsWith("half nicht", StringComparison.Ordinal)
        );
    }

    private static JsonObject Ask(string question, params TriedRemedy[] tried) =>
        DiagnoseAnswers
            .Answer(Input.Read(Encoding.UTF8.GetBytes(question), "case"), tried: tried)
            .Json;

    private static JsonNode Cause(JsonObject answer, string id) =>
        answer["causes"]!.AsArray().Single(c => c!["id"]!.GetValue<string>() == id)!;

    private static double Odds(JsonObject answer, string id)
    {
        var chance = Cause(answer, id)["probability"]!.GetValue<double>();
        return chance / (1 - chance);
    }

    private static List<string> Texts(JsonNode cause, string field) =>
        [.. cause[field]!.AsArray().Select(t => t!.GetValue<string>())];
}
