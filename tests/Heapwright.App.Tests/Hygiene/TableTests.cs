using System.Text;
using Heapwright.App.Contract;
using Heapwright.App.Texts;

namespace Heapwright.App.Tests.Hygiene;

/// <summary>Records as tables, as people's spreadsheets write them.</summary>
public class TableTests
{
    private static readonly string Plain =
        "day,probe,temperature_c,event\n"
        + string.Join(
            "\n",
            Enumerable.Range(1, 16).Select(d => $"{d},core,58.5,{(d % 3 == 0 ? "turn" : "")}")
        );

    [Fact]
    public void Table_AndTheSameInJson_GiveTheSameAnswer()
    {
        var table = Asked.Table(Plain).Answer.Json;
        var json = Asked
            .Json(Asked.Question("windrow", Asked.Daily(1, 16, 58.5), 3, 6, 9, 12, 15))
            .Json;

        Assert.Equal(json.ToJsonString(), table.ToJsonString());
        Assert.Equal(
            "met",
            Asked.Table(Plain).Answer.Rule("us_503_pfrp_windrow")["verdict"]!.GetValue<string>()
        );
    }

    [Fact]
    public void Table_WithMarkAndOtherLineEndsAndSemicolons_IsTheSame()
    {
        var european =
            "\uFEFF"
            + Plain
                .Replace(",", ";", StringComparison.Ordinal)
                .Replace("58.5", "58,5", StringComparison.Ordinal)
                .Replace("\n", "\r\n", StringComparison.Ordinal)
            + "\r\n\r\n";

        Assert.Equal(Hash(Plain), Hash(european));
        Assert.Equal(Hash(Plain), Hash(Plain.Replace(',', '\t')));
    }

    [Fact]
    public void Rows_InAnyOrder_GiveTheSameRecord()
    {
        var lines = Plain.Split('\n');
        var shuffled = lines[1..];
        new Random(7).Shuffle(shuffled);

        Assert.Equal(Hash(Plain), Hash(lines[0] + "\n" + string.Join("\n", shuffled)));
    }

    [Fact]
    public void Row_WithAnEventAlone_IsATurn()
    {
        var answer = Asked.Table(
            "time,probe,temperature_c,event\n2026-05-01T08:00+02:00,core,60,\n2026-05-01T09:00+02:00,,,turned\n2026-05-02T08:00+02:00,core,60,\n"
        );

        Assert.Equal(1, answer.Answer.Json["record"]!["turns"]!.GetValue<int>());
        Assert.Equal(2, answer.Answer.Json["record"]!["readings"]!.GetValue<int>());
    }

    [Fact]
    public void Table_WithoutAnEventColumn_SaysNothingOfTurns()
    {
        var answer = Asked.Table(
            "day,temperature_c\n"
                + string.Join("\n", Enumerable.Range(1, 20).Select(d => $"{d},58"))
        );

        Assert.Equal("cannot_tell", answer.Answer.Verdict("us_503_pfrp_windrow"));
        Assert.Null(answer.Answer.Json["record"]!["turns"]);
    }

    [Theory]
    [InlineData("131", "met")]
    [InlineData("130.9", "not_met")]
    public void Fahrenheit_HasAColumnOfItsOwn(string written, string verdict)
    {
        var answer = Asked.Table(
            "day,probe,temperature_f\n"
                + string.Join("\n", Enumerable.Range(1, 5).Select(d => $"{d},core,{written}")),
            "static_aerated",
            measures: Measures.UsCustomary
        );

        Assert.Equal(verdict, answer.Answer.Verdict("us_503_pfrp_static"));
        Assert.Contains(written + " °F", answer.Answer.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("°C", Head(answer.Answer.Text), StringComparison.Ordinal);
    }

    [Fact]
    public void Days_AreThoseOfTheClockBesideTheHeap()
    {
        // 23:30 and 00:30 in Berlin are two calendar days, though one day by Greenwich.
        var answer = Asked.Table(
            "time,temperature_c\n2026-05-01T23:30+02:00,70\n2026-05-02T00:30+02:00,70\n",
            "in_vessel"
        );

        Assert.Equal(
            2,
            answer.Answer.Rule("de_65_3d")["shown"]!["longest_run_days"]!.GetValue<int>()
        );
    }

    [Theory]
    [InlineData(
        "day,temperature_c\n1,55\n2,hot\n",
        "line 3, column temperature_c: \"hot\" is not a number"
    )]
    [InlineData(
        "day,temperature_c\n1,55\n2,131\n",
        "line 3, column temperature_c: 131 is out of range"
    )]
    [InlineData(
        "day,temperature_c\n1,\"55,5\"\n",
        "line 2, column temperature_c: \"55,5\" is not a number"
    )]
    [InlineData("day,temperature_c\n1,55,5\n", "line 2: has 3 cells; the header has 2")]
    [InlineData("day,temperature_c\n-1,55\n", "line 2, column day: -1 is out of range; 0 to 3660")]
    [InlineData(
        "day,temperature_c\n1,NaN\n",
        "line 2, column temperature_c: \"NaN\" is not a number"
    )]
    [InlineData(
        "day,temperature_c,event\n1,55,burnt\n",
        "line 2, column event: \"burnt\" is not known"
    )]
    [InlineData("day,temperature_c,event\n1,,\n", "line 2: has neither a temperature nor an event")]
    [InlineData(
        "time,temperature_c\nyesterday,55\n",
        "line 2, column time: \"yesterday\" is no time"
    )]
    [InlineData(
        "time,temperature_c\n2026-02-30,55\n",
        "line 2, column time: \"2026-02-30\" is no time"
    )]
    [InlineData(
        "time,temperature_c\n2026-05-01T08:00Z,55\n2026-05-02T08:00,55\n",
        "line 3: \"2026-05-02T08:00:00\" is mixed"
    )]
    [InlineData(
        "day,temprature_c\n1,55\n",
        "the column \"temprature_c\" is not known; the nearest is \"temperature_c\""
    )]
    [InlineData("day,day,temperature_c\n1,1,55\n", "the column \"day\" stands twice")]
    [InlineData("probe,temperature_c\ncore,55\n", "has neither the column \"time\" nor \"day\"")]
    [InlineData("day,temperature_c,temperature_f\n1,55,131\n", "one of them is allowed")]
    [InlineData("day,temperature_c,event\n1,,turn\n", "has no row with a temperature")]
    [InlineData("day,temperature_c\n", "has no row with a temperature")]
    [InlineData("day,probe,temperature_c\n1,\"core,55\n2,core,55\n", "line 2: has 2 cells")]
    public void Row_Wrong_IsNamedWithLineColumnAndValue(string table, string sentence)
    {
        var problem = Assert.Throws<InputProblem>(() => Asked.Table(table));

        Assert.StartsWith("log.csv: ", problem.Message, StringComparison.Ordinal);
        Assert.Contains(sentence, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Table_WithoutAProcess_IsRefused() =>
        Assert.Contains(
            "--process windrow|static_aerated|in_vessel|bin",
            Assert.Throws<InputProblem>(() => Asked.Table(Plain, process: null)).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Table_TooLong_IsRefused()
    {
        var text = new StringBuilder("day,temperature_c\n");
        for (var i = 0; i <= 20_000; i++)
        {
            text.Append("1,55\n");
        }

        Assert.Contains(
            "line 20002: is one reading too many; at most 20000",
            Assert.Throws<InputProblem>(() => Asked.Table(text.ToString())).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "spans 3661 days",
            Assert
                .Throws<InputProblem>(() => Asked.Table("day,temperature_c\n0,55\n3660,55\n"))
                .Message,
            StringComparison.Ordinal
        );
    }

    private static string Hash(string table) =>
        Asked.Table(table).Answer.Json["record_hash"]!.GetValue<string>();

    // What stands before the studies, which keep their own words.
    private static string Head(string text) => text.Split(Words.Of("hygiene.heading_studies"))[0];
}
