using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Library;

namespace Heapwright.App.Tests.Diagnosis;

/// <summary>Words that say nearly the same count as one sign (data/signs/same-sign.csv).</summary>
public class SameSignTests
{
    [Fact]
    public void SameSigns_EveryWord_IsAWordOfItsFieldAndOfOneGroup()
    {
        var model = SignModelReader.Model;
        Assert.NotEmpty(model.Same);
        Assert.All(model.Same, s => Assert.True(s.Words.Count > 1, s.Group));
        Assert.All(model.Same, s => Assert.Empty(s.Words.Except(model.Field(s.Field).Words)));
        var all = model.Same.SelectMany(s => s.Words.Select(w => s.Field + " " + w)).ToList();
        Assert.Equal(all.Count, all.Distinct(StringComparer.Ordinal).Count());
    }

    [Theory]
    [InlineData("see", "matted", "packed", "no_air")]
    [InlineData("smell", "rotten", "sewage", "no_air")]
    public void SameSigns_ToldTogether_AreNoSurerThanTheSurerOfThem(
        string field,
        string one,
        string other,
        string cause
    )
    {
        var both = Chance(field, cause, one, other);
        var alone = Chance(field, cause, one);
        var otherAlone = Chance(field, cause, other);
        Assert.InRange(both, Math.Min(alone, otherAlone), Math.Max(alone, otherAlone) + 0.02);
    }

    private static double Chance(string field, string cause, params string[] words)
    {
        var question = new JsonObject
        {
            ["signs"] = new JsonObject
            {
                [field] = new JsonArray([.. words.Select(w => (JsonNode)w)]),
            },
        };
        return DiagnoseAnswers.Answer(Input.Of(question, "case")).Json["causes"]!
            .AsArray()
            .Single(c => c!["id"]!.GetValue<string>() == cause)!["probability"]!.GetValue<double>();
    }
}
