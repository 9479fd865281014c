using System.Collections.Immutable;

namespace Heapwright.Core.Hygiene;

/// <summary>
/// Holds a record against rules on heat. Every way to read a rule is tried twice: with gaps as not shown, and with gaps
/// as hot. The first meets it or not; where only the second does, nobody can tell.
/// </summary>
public static class RuleJudge
{
    /// <summary>What a record shows of a rule.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="log">The record.</param>
    /// <param name="process">How the heap is kept.</param>
    /// <param name="solidsPercent">Solids, % of wet mass, for rules of dose; null if unknown.</param>
    public static RuleFinding Judge(
        HygieneRule rule,
        HeatLog log,
        ProcessKind process,
        double? solidsPercent = null
    )
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(log);
        if (rule.Period is not { } period)
        {
            return JudgeDose(rule, log, process, solidsPercent);
        }

        var trial = new PeriodTrial(log, period, rule.Spell);
        var applies = rule.Processes.Contains(process);
        ImmutableArray<RuleWay> ways = applies ? [.. Ways(period).Select(trial.Try)] : [];
        return new RuleFinding(
            rule,
            applies ? Together(ways) : RuleVerdict.NotApplicable,
            ways,
            trial.Shown()
        );
    }

    /// <summary>One verdict from those of all ways to read a rule.</summary>
    /// <param name="ways">The ways, at least one.</param>
    public static RuleVerdict Together(ImmutableArray<RuleWay> ways)
    {
        var met = ways.Count(w => w.Verdict == RuleVerdict.Met);
        return met == ways.Length ? RuleVerdict.Met
            : met > 0 ? RuleVerdict.Depends
            : ways.Any(w => w.Verdict == RuleVerdict.CannotTell) ? RuleVerdict.CannotTell
            : RuleVerdict.NotMet;
    }

    private static IEnumerable<(DayCount Count, bool FollowsOn, bool LateTurn)> Ways(
        HeatPeriod period
    )
    {
        DayCount[] counts = period.Days is null
            ? [DayCount.Elapsed]
            : [DayCount.Readings, DayCount.Elapsed];
        bool[] orders = period.Order switch
        {
            DayOrder.Consecutive => [true],
            DayOrder.Any => [false],
            _ => [true, false],
        };
        bool[] lates = period is { Turns: > 0, TurnsInPeriod: true } ? [false, true] : [false];
        return from order in orders
            from count in counts
            from late in lates
            select (count, order, late);
    }

    private static RuleFinding JudgeDose(
        HygieneRule rule,
        HeatLog log,
        ProcessKind process,
        double? solidsPercent
    )
    {
        var doses = HeatDose.Of(log, rule.Doses, solidsPercent);
        bool Enough(ProbeDose d) => d.Dose >= 1 - 1e-9;
        var band = new HeatBand(rule.Doses.Min(d => d.LowestCelsius));
        var trial = new PeriodTrial(log, new HeatPeriod { Band = band }, null);
        var verdict =
            !rule.Processes.Contains(process) ? RuleVerdict.NotApplicable
            : doses.All(Enough) ? RuleVerdict.Met
            : doses.All(d => Enough(d) || d.GapHours > 0) ? RuleVerdict.CannotTell
            : RuleVerdict.NotMet;
        return new RuleFinding(
            rule,
            verdict,
            [],
            trial.Shown() with
            {
                LeastDose = doses.Min(d => d.Dose),
            }
        );
    }
}
