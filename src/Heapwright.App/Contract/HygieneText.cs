using System.Text;
using Heapwright.App.HeatRecords;
using Heapwright.App.Texts;
using Heapwright.Core.Hygiene;

namespace Heapwright.App.Contract;

/// <summary>The answer to <c>hygiene</c> in words.</summary>
internal static class HygieneText
{
    public static string Of(HygieneTold told)
    {
        var measures = told.Assumptions.Measures;
        var words = new HygieneWords(measures);
        var text = new StringBuilder();
        foreach (var line in Facts(told, words, measures))
        {
            text.AppendLine(line);
        }

        text.AppendLine();
        foreach (var finding in told.Findings.OrderBy(f => f.Verdict == RuleVerdict.NotApplicable))
        {
            text.Append(words.Verdict(finding.Verdict).PadRight(16))
                .Append(finding.Rule.Id.PadRight(26))
                .AppendLine(HygieneWords.Title(finding.Rule));
            foreach (var line in Lines(finding, told.Question.Process, words))
            {
                text.Append("  ").AppendLine(line);
            }
        }

        Figures.AppendList(text, words.Say("heading_gaps"), Gaps(told.Question.Record, words));
        Figures.AppendList(
            text,
            words.Say("heading_dose"),
            [
                .. told.Doses.Select(d =>
                    words.Say("dose", d.Probe, Figures.One(d.Dose, measures.Culture))
                ),
            ]
        );
        Figures.AppendList(
            text,
            words.Say("heading_studies"),
            [.. told.Studies.Select(words.Study)]
        );
        Figures.AppendList(text, Words.Of("quantities.assumed"), told.Assumptions.All);
        MaterialCautions.Append(text, told.Cautions);
        text.AppendLine()
            .AppendLine(
                words.Say("hash", told.Question.Record.Entries.Length, told.Question.Record.Hash)
            );
        return text.ToString();
    }

    /// <summary>What the record is.</summary>
    public static IEnumerable<string> Facts(HygieneTold told, HygieneWords words, Measures measures)
    {
        var record = told.Question.Record;
        var log = record.Log;
        yield return words.Say(
            log.Probes.Length == 1 ? "head_one" : "head",
            Capital(words.Process(told.Question.Process)),
            log.Readings.Length,
            log.Probes.Length,
            words.Time(record.TimeOf(log.First)),
            words.Time(record.TimeOf(log.Last))
        );
        yield return words.Say(
            "coldest_line",
            measures.CelsiusAsRead(log.Readings.Min(r => r.Celsius)),
            measures.CelsiusAsRead(log.Readings.Max(r => r.Celsius))
        );
        yield return log.Turns is { } turns
            ? words.Say("turns_line", turns.Length)
            : words.Say("turns_unknown");
    }

    /// <summary>The sentences under a verdict.</summary>
    public static IEnumerable<string> Lines(
        RuleFinding finding,
        ProcessKind process,
        HygieneWords words
    )
    {
        yield return words.Why(finding, process);
        if (finding.Verdict == RuleVerdict.NotApplicable)
        {
            yield break;
        }

        if (words.DependsOn(finding) is { } ways)
        {
            yield return ways;
        }

        if (words.AlsoAsks(finding.Rule) is { Length: > 0 } asks)
        {
            yield return asks;
        }

        yield return words.Source(finding.Rule);
    }

    /// <summary>The gaps of a record; one line says so where there are none.</summary>
    public static IReadOnlyCollection<string> Gaps(HeatRecord record, HygieneWords words)
    {
        string[] gaps =
        [
            .. record
                .Log.Gaps()
                .Select(g =>
                    words.Say(
                        "gap",
                        g.Probe,
                        words.Time(record.TimeOf(g.From)),
                        words.Time(record.TimeOf(g.To)),
                        g.Hours,
                        g.MissingDays
                    )
                ),
        ];
        return gaps.Length > 0 ? gaps : [words.Say("no_gaps")];
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
