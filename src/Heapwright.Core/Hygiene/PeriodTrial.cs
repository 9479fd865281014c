namespace Heapwright.Core.Hygiene;

/// <summary>Holds the period of a rule against a record, in one way of reading after another.</summary>
internal sealed class PeriodTrial
{
    private const double RoundingDays = 1e-7;

    private readonly HeatLog log;
    private readonly HeatPeriod period;
    private readonly HeatSpell? spell;
    private readonly DayTable days;
    private readonly List<HeatPiece> shown;
    private readonly List<HeatPiece> possible;
    private readonly List<HeatPiece> spellShown;
    private readonly List<HeatPiece> spellPossible;

    public PeriodTrial(HeatLog log, HeatPeriod period, HeatSpell? spell)
    {
        (this.log, this.period, this.spell) = (log, period, spell);
        days = new DayTable(log, period.Band);
        shown = HeatPieces.Of(log, period.Band, gapsHot: false);
        possible = HeatPieces.Of(log, period.Band, gapsHot: true);
        spellShown = spell is null ? [] : HeatPieces.Of(log, spell.Band, gapsHot: false);
        spellPossible = spell is null ? [] : HeatPieces.Of(log, spell.Band, gapsHot: true);
    }

    /// <summary>What the record shows at the temperatures of the period.</summary>
    public RuleShown Shown() =>
        new(
            period.Band,
            days.HotDays(gapsHot: false).Count(),
            days.Runs(gapsHot: false).Select(r => r.To - r.From + 1).DefaultIfEmpty(0).Max(),
            shown.Sum(p => p.Hours) / 24,
            shown.Select(p => p.Hours).DefaultIfEmpty(0).Max() / 24,
            log.Turns?.Length,
            spell is null ? null : spellShown.Select(p => p.Hours).DefaultIfEmpty(0).Max(),
            MeanShown(),
            null
        );

    /// <summary>Tries one way of reading.</summary>
    /// <param name="way">How days are counted, whether they must follow one another, whether a late turn counts.</param>
    public RuleWay Try((DayCount Count, bool FollowsOn, bool LateTurn) way)
    {
        var (count, followsOn, late) = way;
        var asShown = Stretches(count, followsOn, gapsHot: false).ToList();
        var enough = asShown.Where(s => IsEnough(s, count, late, gapsHot: false)).ToList();
        var verdict =
            enough.Count > 0 ? RuleVerdict.Met
            : Stretches(count, followsOn, gapsHot: true)
                .Any(s => IsEnough(s, count, late, gapsHot: true))
                ? RuleVerdict.CannotTell
            : RuleVerdict.NotMet;
        var best = (
            enough.Count > 0 ? enough
            : asShown.Count > 0 ? asShown
            : Runs(count, followsOn, gapsHot: false)
        ).OrderByDescending(s => s.Days).Cast<Stretch?>().FirstOrDefault();
        int? turns =
            period.Turns == 0 || log.Turns is null ? null
            : best is { } b ? TurnsFor(b, count, late)
            : 0;
        return new RuleWay(count, followsOn, late, best?.Days ?? 0, turns, verdict);
    }

    private double? MeanShown()
    {
        if (period.MeanAboveCelsius is null)
        {
            return null;
        }

        var best = Stretches(DayCount.Readings, followsOn: true, gapsHot: false)
            .Where(s => s.Days >= (period.Days ?? 0) - RoundingDays)
            .Select(Mean)
            .DefaultIfEmpty(double.NaN)
            .Max();
        return double.IsFinite(best) ? best : null;
    }

    private IEnumerable<Stretch> Stretches(DayCount count, bool followsOn, bool gapsHot)
    {
        var runs = Runs(count, followsOn, gapsHot);
        // Only a mean can be better over a part of a run than over all of it.
        return period.MeanAboveCelsius is null ? runs : runs.SelectMany(run => Parts(run, count));
    }

    private IEnumerable<Stretch> Runs(DayCount count, bool followsOn, bool gapsHot) =>
        count == DayCount.Readings
            ? DayRuns(followsOn, gapsHot)
            : ElapsedRuns(followsOn, gapsHot ? possible : shown);

    private IEnumerable<Stretch> DayRuns(bool followsOn, bool gapsHot)
    {
        if (followsOn)
        {
            return days.Runs(gapsHot).Select(r => OfDays(r.From, r.To, r.To - r.From + 1));
        }

        int[] hot = [.. days.HotDays(gapsHot)];
        return hot.Length == 0 ? [] : [OfDays(hot[0], hot[^1], hot.Length)];
    }

    private static IEnumerable<Stretch> ElapsedRuns(bool followsOn, List<HeatPiece> pieces)
    {
        Stretch Of(HeatPiece first, HeatPiece last, double hours) =>
            new(
                first.From.Day,
                Math.Max(first.From.Day, last.To.Day),
                first.From.Hours,
                last.To.Hours,
                hours / 24
            );
        return followsOn ? pieces.Select(p => Of(p, p, p.Hours))
            : pieces.Count == 0 ? []
            : [Of(pieces[0], pieces[^1], pieces.Sum(p => p.Hours))];
    }

    // The run, and every part of it that may have a higher mean and is long enough, by whole calendar days. A part of d
    // days has at least d - 2 days of elapsed time; so one of twice the days asked and four more falls into two that are
    // long enough, of which one has no lower mean, and need not be tried.
    private IEnumerable<Stretch> Parts(Stretch run, DayCount count)
    {
        var least = (period.Days ?? 0) - RoundingDays;
        if (run.Days >= least)
        {
            yield return run;
        }

        // A day without a reading has no hour at which a part could begin or end.
        var most = (2 * (int)Math.Ceiling(period.Days ?? 0)) + 4;
        for (var from = run.FromDay; from <= run.ToDay; from++)
        {
            var last = days.HasReading(from) ? Math.Min(run.ToDay, from + most - 1) : from - 1;
            for (var to = last; to >= from; to--)
            {
                if (!days.HasReading(to))
                {
                    continue;
                }

                var part =
                    count == DayCount.Readings
                        ? OfDays(from, to, to - from + 1)
                        : Within(run, from, to);
                if (part.Days < least)
                {
                    break;
                }

                yield return part;
            }
        }
    }

    private Stretch Within(Stretch run, int from, int to)
    {
        var begin = from == run.FromDay ? run.FromHours : days.First(from).Hours;
        var end = to == run.ToDay ? run.ToHours : days.Last(to).Hours;
        return new Stretch(from, to, begin, end, (end - begin) / 24);
    }

    private Stretch OfDays(int from, int to, int count) =>
        new(from, to, days.First(from).Hours, days.Last(to).Hours, count);

    private bool IsEnough(Stretch stretch, DayCount count, bool late, bool gapsHot)
    {
        var turns =
            log.Turns is not null ? TurnsFor(stretch, count, late)
            : gapsHot ? int.MaxValue
            : 0;
        return stretch.Days >= (period.Days ?? (period.Hours / 24) ?? 0) - RoundingDays
            && turns >= period.Turns
            && (period.MeanAboveCelsius is not { } mean || IsAbove(stretch, mean, gapsHot))
            && (spell is null || HasSpell(stretch, gapsHot));
    }

    private bool IsAbove(Stretch stretch, double mean, bool gapsHot) =>
        (gapsHot && days.HasUnknown(stretch.FromDay, stretch.ToDay))
        || new HeatBand(mean, MustExceed: true).Holds(Mean(stretch));

    private double Mean(Stretch stretch) => days.Mean(stretch.FromDay, stretch.ToDay);

    private bool HasSpell(Stretch stretch, bool gapsHot) =>
        (gapsHot ? spellPossible : spellShown).Any(p =>
            Math.Min(p.To.Hours, stretch.ToHours) - Math.Max(p.From.Hours, stretch.FromHours)
            >= spell!.Hours - (24 * RoundingDays)
        );

    private int TurnsFor(Stretch stretch, DayCount count, bool late)
    {
        var last = stretch.ToDay + (late ? 1 : 0);
        IEnumerable<LogTurn> turns = period.TurnsInPeriod
            ? log.Turns!.Value.Where(t => t.Day >= stretch.FromDay && t.Day <= last)
            : log.Turns!.Value;
        return period.TurnsApartDays > 0 ? Spaced(turns, count) : turns.Count();
    }

    // The most turns that are as far apart as the rule asks: the first, then always the next that is.
    private int Spaced(IEnumerable<LogTurn> turns, DayCount count)
    {
        LogTurn? before = null;
        var number = 0;
        foreach (var turn in turns)
        {
            var apart =
                before is not { } b ? double.PositiveInfinity
                : count == DayCount.Readings ? turn.Day - b.Day
                : (turn.Hours - b.Hours) / 24;
            if (apart >= period.TurnsApartDays - RoundingDays)
            {
                before = turn;
                number++;
            }
        }

        return number;
    }
}
