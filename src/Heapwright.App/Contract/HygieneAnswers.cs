using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.HeatRecords;
using Heapwright.App.Library;
using Heapwright.App.Paper;
using Heapwright.App.Texts;
using Heapwright.Core.Hygiene;
using Heapwright.Core.Materials;

namespace Heapwright.App.Contract;

/// <summary>Answers <c>hygiene</c>: what a record of heat shows of published rules.</summary>
public static class HygieneAnswers
{
    // A rule repeats the first gaps only; all of them stand once in the answer.
    private const int MostGapsRepeated = 500;
    private const double FireCelsius = 75; // above it heat no longer comes from microbes alone

    /// <summary>Answers a question in JSON, or a table of readings.</summary>
    /// <param name="utf8">The question: a JSON object, or a table with a header.</param>
    /// <param name="file">The name to use in messages.</param>
    /// <param name="options">What was said beside it.</param>
    /// <param name="measures">The measures of its sentences and its text; metric if null.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static HygieneAnswer Answer(
        ReadOnlyMemory<byte> utf8,
        string file,
        HygieneOptions? options = null,
        Measures? measures = null
    )
    {
        var assumptions = new Assumptions(measures ?? Measures.Metric);
        var reader = new HygieneReader(assumptions);
        options ??= HygieneOptions.None;
        var question = IsJson(utf8.Span)
            ? reader.Read(Input.Read(utf8, file), options)
            : new HeatTable(reader, file).Read(Encoding.UTF8.GetString(utf8.Span), options);
        return Answer(question, assumptions);
    }

    /// <summary>Answers a question in JSON.</summary>
    /// <param name="input">The question.</param>
    /// <param name="measures">The measures of its sentences and its text; metric if null.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static Answer Answer(Input input, Measures? measures = null)
    {
        ArgumentNullException.ThrowIfNull(input);
        var assumptions = new Assumptions(measures ?? Measures.Metric);
        return Answer(
            new HygieneReader(assumptions).Read(input, HygieneOptions.None),
            assumptions
        ).Answer;
    }

    // A table begins with the name of a column.
    private static bool IsJson(ReadOnlySpan<byte> utf8)
    {
        utf8 = utf8.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? utf8[3..] : utf8;
        return utf8.TrimStart(" \t\r\n"u8) is [(byte)'{' or (byte)'[', ..];
    }

    private static HygieneAnswer Answer(HygieneQuestion question, Assumptions assumptions)
    {
        var (log, words) = (question.Record.Log, new HygieneWords(assumptions.Measures));
        ImmutableArray<RuleFinding> findings =
        [
            .. question.Rules.Select(r =>
                RuleJudge.Judge(r, log, question.Process, question.SolidsPercent)
            ),
        ];
        var formulas = HygieneRuleReader.Rules.First(r => !r.Doses.IsEmpty).Doses;
        var doses = HeatDose.Of(log, formulas, question.SolidsPercent);
        var studies = StudyEvidence.Compare(HygieneRuleReader.Studies, log);
        SayHow(question, formulas, assumptions);
        var gaps = Gaps(question.Record);
        var json = new JsonObject
        {
            ["schema"] = Json.Schema,
            ["process"] = HygieneRuleReader.Word(question.Process),
            ["country"] = question.Country,
            ["rules"] = new JsonArray([.. findings.Select(f => Rule(f, gaps, question, words))]),
            ["time_temperature"] = new JsonArray([.. doses.Select(Dose)]),
            ["gaps"] = gaps,
            ["record"] = Record(question.Record),
            ["record_hash"] = question.Record.Hash,
            ["evidence"] = new JsonArray([.. studies.Select(s => Study(s, words))]),
            ["assumptions"] = assumptions.ToJson(),
        };
        string[] also =
            log.Readings.Max(r => r.Celsius) >= FireCelsius
                ? ["record_of_heat", "legionella_dust", "fire_in_heap"]
                : ["record_of_heat", "legionella_dust"];
        var cautions = MaterialCautions.Of([], also);
        json["cautions"] = cautions;
        var yes = !question.AreNamed || !findings.Any(f => f.Verdict == RuleVerdict.NotMet);
        var told = new HygieneTold(question, findings, doses, studies, assumptions, cautions);
        return new HygieneAnswer(
            new Answer(json, yes, HygieneText.Of(told)),
            (paper, madeAt, measures) =>
                HeatRecordPdf.Render(told, paper, madeAt, new HygieneWords(measures), measures)
        );
    }

    private static void SayHow(
        HygieneQuestion question,
        ImmutableArray<DoseFormula> formulas,
        Assumptions assumptions
    )
    {
        assumptions.Say("hygiene.coldest_counts");
        assumptions.Say("hygiene.runs_counted");
        assumptions.Say(
            question.Record.Log.Turns is null ? "hygiene.turns_unknown" : "hygiene.turns_counted"
        );
        assumptions.Say(
            "hygiene.dose_counted",
            assumptions.Measures.Celsius(formulas.Min(f => f.LowestCelsius))
        );
        if (question.SolidsPercent is null)
        {
            assumptions.Say("hygiene.solids_absent");
        }
    }

    private static JsonNode Rule(
        RuleFinding finding,
        JsonArray gaps,
        HygieneQuestion question,
        HygieneWords words
    )
    {
        var shown = finding.Shown;
        var rule = finding.Rule;
        return new JsonObject
        {
            ["rule"] = rule.Id,
            ["title"] = HygieneWords.Title(rule),
            ["verdict"] = HygieneWords.Code(finding.Verdict),
            ["depends_on"] = words.DependsOn(finding),
            ["why"] = words.Why(finding, question.Process),
            ["shown"] = new JsonObject
            {
                ["lowest_c"] = shown.Band.LowestCelsius,
                ["highest_c"] = Json.Of(shown.Band.HighestCelsius),
                ["days_at_or_above"] = shown.DaysAtOrAbove,
                ["longest_run_days"] = shown.LongestRunDays,
                ["elapsed_days_at_or_above"] = shown.ElapsedDays,
                ["longest_run_elapsed_days"] = shown.LongestElapsedDays,
                ["turns"] = shown.Turns,
                ["turns_in_period"] = finding.Ways.Max(w => w.Turns),
                ["longest_spell_h"] = Json.Of(shown.LongestSpellHours),
                ["mean_c"] = Json.Of(shown.MeanCelsius),
                ["dose"] = Json.Of(shown.LeastDose),
            },
            ["asked"] = Asked(rule),
            ["ways"] = new JsonArray([.. finding.Ways.Select(Way)]),
            ["gaps"] =
                finding.Verdict == RuleVerdict.NotApplicable
                    ? []
                    : new JsonArray([.. gaps.Take(MostGapsRepeated).Select(g => g!.DeepClone())]),
            ["also_asks"] = words.AlsoAsks(rule),
            ["source"] = rule.Citation,
            ["reference"] = rule.Source,
            ["kind"] = EvidenceKinds.Word(rule.Kind),
        };
    }

    private static JsonObject Asked(HygieneRule rule) =>
        new()
        {
            ["days"] = Json.Of(rule.Period?.Days),
            ["hours"] = Json.Of(rule.Period?.Hours),
            ["turns"] = rule.Period?.Turns ?? 0,
            ["mean_above_c"] = Json.Of(rule.Period?.MeanAboveCelsius),
            ["spell_above_c"] = Json.Of(rule.Spell?.Band.LowestCelsius),
            ["spell_h"] = Json.Of(rule.Spell?.Hours),
            ["dose"] = rule.Doses.IsEmpty ? null : 1,
        };

    private static JsonNode Way(RuleWay way) =>
        new JsonObject
        {
            ["count"] = way.Count == DayCount.Readings ? "readings" : "elapsed",
            ["consecutive"] = way.FollowsOn,
            ["turns_on_day_after"] = way.LateTurn,
            ["days"] = way.Days,
            ["turns"] = way.Turns,
            ["verdict"] = HygieneWords.Code(way.Verdict),
        };

    private static JsonNode Dose(ProbeDose dose) =>
        new JsonObject
        {
            ["probe"] = dose.Probe,
            ["dose"] = dose.Dose,
            ["counted_h"] = dose.Hours,
            ["gap_h"] = dose.GapHours,
        };

    private static JsonObject Record(HeatRecord record)
    {
        var log = record.Log;
        return new JsonObject
        {
            ["entries"] = record.Entries.Length,
            ["readings"] = log.Readings.Length,
            ["turns"] = log.Turns?.Length,
            ["probes"] = Json.Of(log.Probes),
            ["first"] = Time(record.TimeOf(log.First)),
            ["last"] = Time(record.TimeOf(log.Last)),
            ["coldest_c"] = log.Readings.Min(r => r.Celsius),
            ["hottest_c"] = log.Readings.Max(r => r.Celsius),
        };
    }

    private static JsonArray Gaps(HeatRecord record) =>
        new([
            .. record
                .Log.Gaps()
                .Select(g => new JsonObject
                {
                    ["probe"] = g.Probe,
                    ["from"] = Time(record.TimeOf(g.From)),
                    ["to"] = Time(record.TimeOf(g.To)),
                    ["hours"] = g.Hours,
                    ["missing_days"] = g.MissingDays,
                }),
        ]);

    private static JsonNode Time(EntryTime time) =>
        time.Form == EntryTimeForm.Day
            ? JsonValue.Create(double.Parse(time.Text, CultureInfo.InvariantCulture))
            : JsonValue.Create(time.Text);

    private static JsonNode Study(StudyComparison comparison, HygieneWords words) =>
        new JsonObject
        {
            ["id"] = comparison.Study.Id,
            ["about"] = comparison.Study.About,
            ["text"] = words.Study(comparison),
            ["shown_h"] = Json.Of(comparison.ShownHours),
            ["asked_h"] = Json.Of(comparison.Study.Hours),
            ["as_hot_as_long"] = comparison.AsHotAsLong,
            ["others_disagree"] = comparison.Study.Disagrees,
            ["source"] = comparison.Study.Source,
            ["kind"] = EvidenceKinds.Word(comparison.Study.Kind),
        };
}
