using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using UglyToad.PdfPig;

namespace Heapwright.App.Tests.Hygiene;

/// <summary>The command <c>hygiene</c> as the contract has it: names, shapes, an answered no, refusals, the record.</summary>
public class QuestionTests
{
    [Fact]
    public void Answer_HasTheFieldsOfTheContract()
    {
        var json = Asked.Json(Asked.Question("windrow", Asked.Daily(1, 16, 58), 3, 6)).Json;

        Assert.Equal(1, json["schema"]!.GetValue<int>());
        Assert.All(
            json["rules"]!.AsArray(),
            rule =>
                Assert.Superset(
                    new HashSet<string>
                    {
                        "rule",
                        "verdict",
                        "depends_on",
                        "shown",
                        "gaps",
                        "source",
                        "kind",
                    },
                    rule!.AsObject().Select(f => f.Key).ToHashSet(StringComparer.Ordinal)
                )
        );
        Assert.Equal("core", json["time_temperature"]![0]!["probe"]!.GetValue<string>());
        Assert.NotEmpty(json["assumptions"]!.AsArray());
        Assert.Contains(
            json["cautions"]!.AsArray(),
            c => c!["id"]!.GetValue<string>() == "record_of_heat"
        );
    }

    [Theory]
    [InlineData("us_503_pfrp_windrow", false)] // four turns: not met
    [InlineData("us_503_pfrp_static", true)] // not applicable
    [InlineData("de_55_14d", true)] // met
    public void RuleNamed_NotMet_IsAnAnsweredNo(string rule, bool yes)
    {
        var question = Asked.Question("windrow", Asked.Daily(1, 20, 58), 3, 6, 9, 12);
        Assert.True(Asked.Json(question.DeepClone().AsObject()).Yes);

        question["rules"] = new JsonArray(rule);
        var answer = Asked.Json(question);

        Assert.Equal(yes, answer.Yes);
        Assert.Single(answer.Json["rules"]!.AsArray());
    }

    [Theory]
    [InlineData("us", 9)]
    [InlineData("de", 3)]
    [InlineData("eu", 4)]
    [InlineData("uk", 4)]
    [InlineData("wales", 4)]
    [InlineData("ca", 2)]
    [InlineData("au", 1)]
    public void Country_ChoosesItsRules(string country, int rules)
    {
        var question = Asked.Question("windrow", Asked.Daily(1, 3, 58));
        question["country"] = country;

        Assert.Equal(rules, Asked.Json(question).Json["rules"]!.AsArray().Count);
    }

    [Theory]
    [InlineData(
        """{"readings":[{"day":1,"temperature_c":55}]}""",
        "the field \"process\" is missing"
    )]
    [InlineData(
        """{"process":"pit","readings":[{"day":1,"temperature_c":55}]}""",
        "process: \"pit\" is not allowed"
    )]
    [InlineData("""{"process":"bin","readings":[]}""", "readings: has 0 entries")]
    [InlineData(
        """{"process":"bin","readings":[{"day":1,"temprature_c":55}]}""",
        "readings[0]: the field \"temprature_c\" is not known; the nearest is \"temperature_c\""
    )]
    [InlineData(
        """{"process":"bin","readings":[{"temperature_c":55}]}""",
        "readings[0]: has neither a \"time\" nor a \"day\""
    )]
    [InlineData(
        """{"process":"bin","readings":[{"day":1,"time":"2026-05-01","temperature_c":55}]}""",
        "has a time and a day"
    )]
    [InlineData(
        """{"process":"bin","readings":[{"day":1,"temperature_c":55},{"time":"2026-05-01","temperature_c":55}]}""",
        "readings[1]: \"2026-05-01\" is mixed with \"1\""
    )]
    [InlineData(
        """{"process":"bin","readings":[{"day":1,"temperature_c":"55"}]}""",
        "readings[0].temperature_c: \"55\" is not a number"
    )]
    [InlineData(
        """{"process":"bin","readings":[{"day":1,"temperature_c":131}]}""",
        "131 is out of range; -40 to 110"
    )]
    [InlineData(
        """{"process":"bin","readings":[{"day":1,"temperature_c":55}],"turns":["2026-05-01"]}""",
        "turns[0]: \"2026-05-01\" is not written as the times of the readings are"
    )]
    [InlineData(
        """{"process":"bin","readings":[{"day":1,"temperature_c":55}],"rules":["us_503_prfp_windrow"]}""",
        "the nearest being \"us_503_pfrp_windrow\""
    )]
    [InlineData(
        """{"process":"bin","readings":[{"day":1,"temperature_c":55}],"country":"fr"}""",
        "country: \"fr\" is not allowed"
    )]
    [InlineData(
        """{"process":"bin","readings":[{"day":1,"temperature_c":55}],"solids_pct":0}""",
        "solids_pct: 0 is out of range"
    )]
    [InlineData(
        """{"process":"bin","readings":[{"day":1,"temperature_c":55}],"schema":2}""",
        "schema: 2 is out of range"
    )]
    public void Question_Wrong_IsRefusedWithItsPlace(string question, string sentence) =>
        Assert.Contains(
            sentence,
            Assert
                .Throws<InputProblem>(() =>
                    HygieneAnswers.Answer(Input.Read(Encoding.UTF8.GetBytes(question), "log.json"))
                )
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Turns_GivenAsDaysBesideTimes_CountFromTheFirstReading()
    {
        var question = Asked.Question(
            "windrow",
            Enumerable
                .Range(1, 17)
                .Select(d => new JsonObject
                {
                    ["time"] = $"2026-05-{d:00}T08:00:00+02:00",
                    ["temperature_c"] = 58,
                }),
            3,
            6,
            9,
            12,
            15
        );
        var answer = Asked.Json(question);

        Assert.Equal("met", answer.Verdict("us_503_pfrp_windrow"));
        Assert.Contains(
            Words.Of("hygiene.turns_from_first"),
            answer.Json["assumptions"]!.AsArray().Select(a => a!.GetValue<string>())
        );
    }

    // As docs/models/hygiene.md tells it, without any code of ours.
    [Fact]
    public void RecordHash_WorkedOutByAThirdParty_IsTheSame()
    {
        var answer = Asked.Table(
            "time,probe,temperature_f,event\n"
                + "2026-05-02 07:30,edge,131,turn\n"
                + "2026-05-01T08:00:00,core,140.5,\n"
                + "2026-05-01,\"core|2\",133,\n",
            "bin"
        );
        string[] entries =
        [
            "1|2026-05-01|reading|133 F|core|2",
            "2|2026-05-01T08:00:00|reading|140.5 F|core",
            "3|2026-05-02T07:30:00|reading|131 F|edge",
            "4|2026-05-02T07:30:00|turn||",
        ];

        var hash = Sha("heapwright heat record 1|bin");
        foreach (var entry in entries)
        {
            hash = Sha(hash + "\n" + entry);
        }

        Assert.Equal(hash, answer.Answer.Json["record_hash"]!.GetValue<string>());
        Assert.Contains(hash, answer.Answer.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1,core,58,\n2,core,58.1,")]
    [InlineData("1,core,58,\n2,Core,58,")]
    [InlineData("1,core,58,\n2.1,core,58,")]
    [InlineData("1,core,58,\n2,core,58,turn")]
    [InlineData("1,core,58,")]
    public void RecordHash_AfterAnyChange_IsAnother(string changed)
    {
        const string Head = "day,probe,temperature_c,event\n";
        string Hash(string rows, string process = "bin") =>
            Asked.Table(Head + rows, process).Answer.Json["record_hash"]!.GetValue<string>();

        Assert.NotEqual(Hash("1,core,58,\n2,core,58,"), Hash(changed));
        Assert.NotEqual(Hash(changed), Hash(changed, "windrow"));
    }

    [Fact]
    public void Pdf_HasTheLogInOrderTheVerdictsTheHashAndRoomToSign()
    {
        var answer = Asked.Table(
            "day,probe,temperature_c,event\n"
                + string.Join(
                    "\n",
                    Enumerable.Range(1, 60).Reverse().Select(d => $"{d},core,{50 + (d % 7)}.5,")
                )
        );
        var made = new DateTimeOffset(2026, 6, 1, 10, 0, 0, TimeSpan.Zero);
        var bytes = answer.Pdf(App.BuildSheets.PaperSize.A4, made, Measures.Metric);

        using var pdf = PdfDocument.Open(bytes);
        var text = string.Join(
            " ",
            pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text)
        );

        Assert.Contains(
            answer.Answer.Json["record_hash"]!.GetValue<string>(),
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("Signature", text, StringComparison.Ordinal);
        Assert.Contains("21 CFR 112.54(b)", text, StringComparison.Ordinal);
        Assert.True(
            text.IndexOf("1 1 51.5 C core", StringComparison.Ordinal)
                < text.IndexOf("60 60 54.5 C core", StringComparison.Ordinal)
        );
        Assert.True(text.Contains("1 1 51.5 C core", StringComparison.Ordinal), text);
        Assert.Equal(bytes, answer.Pdf(App.BuildSheets.PaperSize.A4, made, Measures.Metric));
    }

    [Fact]
    public void Rules_HaveSourcesInTheReferencesAndSentencesForAllTheyAsk()
    {
        var references = DataFiles.Text("references.bib");
        foreach (var rule in HygieneRuleReader.Rules)
        {
            Assert.Contains("{" + rule.Source + ",", references, StringComparison.Ordinal);
            Assert.All(rule.AlsoAsks, code => Assert.NotNull(Words.TryOf("hygiene.asks_" + code)));
            Assert.True(rule.Period is null != rule.Doses.IsEmpty, rule.Id);
        }

        foreach (var study in HygieneRuleReader.Studies)
        {
            Assert.Contains("{" + study.Source + ",", references, StringComparison.Ordinal);
            Assert.NotNull(Words.TryOf("hygiene.study_" + study.Id));
        }
    }

    [Fact]
    public void Studies_StandBesideTheRecordAsTheyAre()
    {
        var studies = Asked.Json(Asked.Question("bin", Asked.Daily(1, 16, 58))).Json[
            "evidence"
        ]!.AsArray();
        JsonNode Study(string id) => studies.Single(s => s!["id"]!.GetValue<string>() == id)!;

        // 15 days at 58 °C: as much as two weeks at 55, not as much as four.
        Assert.True(Study("tompkins_2_weeks")["as_hot_as_long"]!.GetValue<bool>());
        Assert.False(Study("tompkins_4_weeks")["as_hot_as_long"]!.GetValue<bool>());
        Assert.Equal(360, Study("tompkins_4_weeks")["shown_h"]!.GetValue<double>(), 1e-6);
        Assert.True(Study("thompson_65")["others_disagree"]!.GetValue<bool>());
        Assert.Null(Study("thompson_65")["as_hot_as_long"]);
    }

    private static string Sha(string text) =>
        Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text))).ToLowerInvariant();
}
