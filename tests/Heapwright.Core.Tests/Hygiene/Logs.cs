using System.Collections.Immutable;
using Heapwright.Core.Hygiene;
using Heapwright.Core.Materials;

namespace Heapwright.Core.Tests.Hygiene;

/// <summary>Records and rules written by hand.</summary>
internal static class Logs
{
    public static readonly HygieneRule Windrow = Rule(
        new HeatPeriod
        {
            Band = new HeatBand(55),
            Days = 15,
            Order = DayOrder.Open,
            Turns = 5,
        }
    );

    public static LogReading At(double day, double celsius, string probe = "core") =>
        new(24 * day, (int)Math.Floor(day), probe, celsius);

    public static LogTurn Turn(double day) => new(24 * day, (int)Math.Floor(day));

    public static HeatLog Daily(
        int from,
        int to,
        double celsius,
        IEnumerable<double>? turns = null
    ) =>
        HeatLog.Of(
            Enumerable.Range(from, to - from + 1).Select(d => At(d, celsius)),
            turns?.Select(Turn)
        );

    public static HygieneRule Rule(HeatPeriod period, HeatSpell? spell = null) =>
        new()
        {
            Id = "test",
            Title = "test",
            Countries = ["us"],
            Processes = [ProcessKind.Windrow],
            Period = period,
            Spell = spell,
            Source = "test",
            Citation = "test",
            Kind = EvidenceKind.Estimate,
        };

    public static RuleVerdict Verdict(HygieneRule rule, HeatLog log) =>
        RuleJudge.Judge(rule, log, ProcessKind.Windrow).Verdict;

    public static readonly ImmutableArray<DoseFormula> Formulas =
    [
        new("solids_7_or_more", 7, null, 20, null, 50, 131_700_000, 0.14),
        new("solids_below_7", 0, 7, 30, null, 50, 50_070_000, 0.14),
        new("solids_below_7_short", 0, 7, 0.25, 30, 50, 131_700_000, 0.14),
    ];
}
