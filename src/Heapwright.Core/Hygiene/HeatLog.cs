using System.Collections.Immutable;

namespace Heapwright.Core.Hygiene;

/// <summary>
/// A record of heat as it was written down: readings by probe, and turns. Nothing is filled in: where a probe says nothing
/// for more than <see cref="LongestIntervalHours"/>, or leaves out a calendar day, there is a gap.
/// </summary>
public sealed class HeatLog
{
    /// <summary>The longest time between two readings of a probe that is no gap, hours.</summary>
    public const double LongestIntervalHours = 36;

    /// <summary>The most calendar days that a record may span.</summary>
    public const int MostDays = 3660;

    // Days written as decimals, such as 1.1 and 2.6, are 36 hours apart to the last bits only.
    private const double RoundingHours = 1e-6;

    private HeatLog(ImmutableArray<LogReading> readings, ImmutableArray<LogTurn>? turns)
    {
        Readings = readings;
        Turns = turns;
        Probes =
        [
            .. readings
                .Select(r => r.Probe)
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
        ];
        ByProbe = [.. Probes.Select(p => readings.Where(r => r.Probe == p).ToImmutableArray())];
    }

    /// <summary>The readings in order of time; at the same time by probe, the colder first.</summary>
    public ImmutableArray<LogReading> Readings { get; }

    /// <summary>The turns in order of time; null where the record says nothing of turns.</summary>
    public ImmutableArray<LogTurn>? Turns { get; }

    /// <summary>The names of the probes.</summary>
    public ImmutableArray<string> Probes { get; }

    /// <summary>The first reading's moment.</summary>
    public LogMoment First => Readings[0].Moment;

    /// <summary>The last reading's moment.</summary>
    public LogMoment Last => Readings[^1].Moment;

    internal ImmutableArray<ImmutableArray<LogReading>> ByProbe { get; }

    /// <summary>A record, whatever order its entries come in.</summary>
    /// <param name="readings">At least one reading.</param>
    /// <param name="turns">The turns; null where nothing is said of turns, empty where there were none.</param>
    /// <exception cref="ArgumentOutOfRangeException">No reading, one that is no number, or more than <see cref="MostDays"/> days.</exception>
    public static HeatLog Of(IEnumerable<LogReading> readings, IEnumerable<LogTurn>? turns)
    {
        ImmutableArray<LogReading> sorted =
        [
            .. readings
                .OrderBy(r => r.Hours)
                .ThenBy(r => r.Probe, StringComparer.Ordinal)
                .ThenBy(r => r.Celsius),
        ];
        if (
            sorted.IsEmpty
            || sorted.Any(r => !double.IsFinite(r.Hours) || !double.IsFinite(r.Celsius))
        )
        {
            throw new ArgumentOutOfRangeException(
                nameof(readings),
                sorted.Length,
                "at least one reading, all of them finite, is needed"
            );
        }

        var days = sorted.Max(r => r.Day) - (long)sorted.Min(r => r.Day) + 1;
        if (days > MostDays)
        {
            throw new ArgumentOutOfRangeException(
                nameof(readings),
                days,
                $"1 to {MostDays} days are allowed"
            );
        }

        return new HeatLog(
            sorted,
            turns is null ? null : [.. turns.OrderBy(t => t.Hours).ThenBy(t => t.Day)]
        );
    }

    /// <summary>The stretches of which a probe says nothing, by probe and time.</summary>
    public IEnumerable<LogGap> Gaps()
    {
        for (var p = 0; p < Probes.Length; p++)
        {
            var own = ByProbe[p];
            if (own[0].Day > First.Day || IsGap(First, own[0].Moment))
            {
                yield return new LogGap(Probes[p], First, own[0].Moment, own[0].Day - First.Day);
            }

            for (var i = 1; i < own.Length; i++)
            {
                var missing = own[i].Day - own[i - 1].Day - 1;
                if (missing > 0 || IsGap(own[i - 1].Moment, own[i].Moment))
                {
                    yield return new LogGap(
                        Probes[p],
                        own[i - 1].Moment,
                        own[i].Moment,
                        Math.Max(0, missing)
                    );
                }
            }

            if (own[^1].Day < Last.Day || IsGap(own[^1].Moment, Last))
            {
                yield return new LogGap(Probes[p], own[^1].Moment, Last, Last.Day - own[^1].Day);
            }
        }
    }

    internal static bool IsGap(LogMoment from, LogMoment to) =>
        to.Hours - from.Hours > LongestIntervalHours + RoundingHours;
}
