using System.Text;
using Heapwright.App.HeatRecords;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Hygiene;
using Heapwright.Core.Materials;

namespace Heapwright.App.Contract;

/// <summary>What a record shows of a rule, in sentences.</summary>
/// <param name="measures">The reader's units.</param>
internal sealed class HygieneWords(Measures measures)
{
    /// <summary>The word of a verdict in files and answers.</summary>
    public static string Code(RuleVerdict verdict) =>
        verdict switch
        {
            RuleVerdict.Met => "met",
            RuleVerdict.NotMet => "not_met",
            RuleVerdict.CannotTell => "cannot_tell",
            RuleVerdict.Depends => "depends",
            _ => "not_applicable",
        };

    /// <summary>The word of a verdict for a person.</summary>
    public string Verdict(RuleVerdict verdict) => Say("verdict_" + Code(verdict));

    /// <summary>A kind of process for a person.</summary>
    public string Process(ProcessKind process) => Say("process_" + HygieneRuleReader.Word(process));

    /// <summary>What a rule is called.</summary>
    /// <param name="rule">The rule.</param>
    public static string Title(HygieneRule rule) =>
        Words.TryOf("hygiene.rule_" + rule.Id) ?? rule.Title;

    /// <summary>A moment of a record.</summary>
    public string Time(EntryTime time) =>
        time.Form == EntryTimeForm.Day ? Say("day", time.Text) : time.Text;

    /// <summary>Why a verdict is what it is.</summary>
    public string Why(RuleFinding finding, ProcessKind process)
    {
        if (finding.Verdict == RuleVerdict.NotApplicable)
        {
            return NotApplicable(finding.Rule, process);
        }

        var parts = finding.Rule.Period is { } period
            ? PeriodParts(finding, period)
            : [Say("why_dose", finding.Shown.LeastDose!.Value)];
        if (finding.Verdict == RuleVerdict.CannotTell)
        {
            parts.Add(
                Say(
                    finding is { Rule.Period.Turns: > 0, Shown.Turns: null }
                        ? "why_unknown_turns"
                        : "why_gaps"
                )
            );
        }

        return string.Join(" ", parts);
    }

    /// <summary>The ways to read a rule between which the verdict differs, spelled out; null where it does not.</summary>
    public string? DependsOn(RuleFinding finding)
    {
        if (finding.Verdict != RuleVerdict.Depends)
        {
            return null;
        }

        var ways = finding.Ways;
        bool Differs(Func<RuleWay, object> others) =>
            ways.GroupBy(others).Any(g => g.DistinctBy(w => w.Verdict).Count() > 1);
        var byCount = Differs(w => (w.FollowsOn, w.LateTurn));
        var byOrder = Differs(w => (w.Count, w.LateTurn));
        var byTurn = Differs(w => (w.Count, w.FollowsOn));
        var first = ways[0];
        return string.Join(
            " ",
            ways.Where(w =>
                    (byCount || w.Count == first.Count)
                    && (byOrder || w.FollowsOn == first.FollowsOn)
                    && (byTurn || w.LateTurn == first.LateTurn)
                )
                .Select(w => Way(w, finding.Rule.Period!, byOrder, byTurn))
        );
    }

    /// <summary>What else a rule asks; empty where nothing.</summary>
    public string AlsoAsks(HygieneRule rule) =>
        rule.AlsoAsks.IsEmpty
            ? ""
            : Say("asks", string.Join("; ", rule.AlsoAsks.Select(c => Say("asks_" + c)))) + ".";

    /// <summary>The source of a rule.</summary>
    public string Source(HygieneRule rule) =>
        Say(
            rule.Kind == EvidenceKind.Printed ? "source_printed" : "source_from_memory",
            rule.Citation
        );

    /// <summary>A study beside the record.</summary>
    public string Study(StudyComparison comparison)
    {
        var study = comparison.Study;
        var text = study.Band is { } band
            ? Say(
                "study_" + study.Id,
                measures.Celsius(band.LowestCelsius),
                study.ToCelsius is { } to ? measures.Celsius(to) : ""
            )
            : Say("study_" + study.Id);
        return comparison.AsHotAsLong switch
        {
            true => Say("study_reached", text),
            false => Say("study_not_reached", text, comparison.ShownHours!.Value),
            null => Say("study_open", text),
        };
    }

    /// <summary>A sentence of Texts/Hygiene.resx.</summary>
    public string Say(string code, params object[] values) =>
        Words.Of("hygiene." + code, measures.Culture, values);

    private string NotApplicable(HygieneRule rule, ProcessKind process)
    {
        var text = Say(
            "why_not_applicable",
            string.Join(", ", rule.Processes.Select(Process)),
            Process(process)
        );
        return process == ProcessKind.Bin && !rule.Processes.Contains(ProcessKind.Windrow)
            ? text + " " + Say("why_bin")
            : text;
    }

    private List<string> PeriodParts(RuleFinding finding, HeatPeriod period)
    {
        var shown = finding.Shown;
        var parts = new List<string>();
        if (period.Days is { } days)
        {
            parts.Add(
                period.Order == DayOrder.Any
                    ? Say(
                        "why_days_any",
                        Band(period.Band),
                        shown.DaysAtOrAbove,
                        shown.ElapsedDays,
                        days
                    )
                    : Say(
                        "why_days",
                        Band(period.Band),
                        shown.LongestRunDays,
                        shown.LongestElapsedDays,
                        days
                    )
            );
        }
        else
        {
            parts.Add(
                Say(
                    "why_hours",
                    Band(period.Band),
                    24 * shown.LongestElapsedDays,
                    period.Hours!.Value
                )
            );
        }

        if (period.MeanAboveCelsius is { } mean)
        {
            parts.Add(
                shown.MeanCelsius is { } found
                    ? Say("why_mean", measures.CelsiusAsRead(found), measures.CelsiusAsRead(mean))
                    : Say("why_mean_none", measures.CelsiusAsRead(mean))
            );
        }

        if (finding.Rule.Spell is { } spell)
        {
            parts.Add(
                Say("why_spell", Band(spell.Band), shown.LongestSpellHours!.Value, spell.Hours)
            );
        }

        if (period.Turns > 0)
        {
            var most = finding.Ways.Max(w => w.Turns);
            parts.Add(
                most is not { } turns ? Say("why_turns_unknown", period.Turns)
                : period.TurnsApartDays > 0
                    ? Say("why_turns_apart", turns, period.Turns, period.TurnsApartDays)
                : Say("why_turns", turns, period.Turns)
            );
        }

        return parts;
    }

    private string Way(RuleWay way, HeatPeriod period, bool sayOrder, bool sayTurn)
    {
        var text = new StringBuilder(
            Say(way.Count == DayCount.Readings ? "way_readings" : "way_elapsed")
        );
        if (sayOrder)
        {
            text.Append(Say(way.FollowsOn ? "way_follow" : "way_any"));
        }

        if (sayTurn)
        {
            text.Append(Say(way.LateTurn ? "way_late" : "way_on_time"));
        }

        text.Append(Say("way_days", way.Days, period.Days ?? 0));
        if (way.Turns is { } turns)
        {
            text.Append(Say("way_turns", turns, period.Turns));
        }

        return text.Append(Say("way_verdict", Verdict(way.Verdict))).ToString();
    }

    private string Band(HeatBand band) =>
        band.HighestCelsius is { } highest
            ? Say(
                "band_between",
                measures.CelsiusAsRead(band.LowestCelsius),
                measures.CelsiusAsRead(highest)
            )
            : Say(
                band.MustExceed ? "band_above" : "band_from",
                measures.CelsiusAsRead(band.LowestCelsius)
            );
}
