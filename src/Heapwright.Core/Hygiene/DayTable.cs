namespace Heapwright.Core.Hygiene;

/// <summary>The calendar days of a record, from the first to the last, held against a band.</summary>
internal sealed class DayTable
{
    private readonly DayState[] states;
    private readonly bool[] broken;
    private readonly double[] meansBefore;
    private readonly int[] readBefore;
    private readonly int[] unknownBefore;
    private readonly LogMoment[] firsts;
    private readonly LogMoment[] lasts;

    public DayTable(HeatLog log, HeatBand band)
    {
        FirstDay = log.Readings.Min(r => r.Day);
        var count = log.Readings.Max(r => r.Day) - FirstDay + 1;
        states = new DayState[count];
        broken = new bool[count];
        var means = new double[count];
        firsts = new LogMoment[count];
        lasts = new LogMoment[count];
        Array.Fill(means, double.PositiveInfinity);
        var seenBy = new int[count];
        var cold = new bool[count];
        var sums = new double[count];
        var counts = new int[count];
        foreach (var own in log.ByProbe)
        {
            Array.Clear(sums);
            Array.Clear(counts);
            for (var i = 0; i < own.Length; i++)
            {
                var day = own[i].Day - FirstDay;
                sums[day] += own[i].Celsius;
                counts[day]++;
                cold[day] |= !band.Holds(own[i].Celsius);
                if (i > 0 && HeatLog.IsGap(own[i - 1].Moment, own[i].Moment))
                {
                    Array.Fill(
                        broken,
                        true,
                        Math.Min(own[i - 1].Day, own[i].Day) - FirstDay,
                        Math.Max(1, Math.Abs(own[i].Day - own[i - 1].Day))
                    );
                }
            }

            for (var day = 0; day < count; day++)
            {
                if (counts[day] > 0)
                {
                    seenBy[day]++;
                    means[day] = Math.Min(means[day], sums[day] / counts[day]);
                }
            }
        }

        for (var day = 0; day < count; day++)
        {
            states[day] =
                cold[day] ? DayState.Cold
                : seenBy[day] == log.Probes.Length ? DayState.Hot
                : DayState.Unknown;
        }

        // Sums over the days before, so that the mean of any stretch is two look-ups away.
        meansBefore = new double[count + 1];
        readBefore = new int[count + 1];
        unknownBefore = new int[count + 1];
        for (var day = 0; day < count; day++)
        {
            var read = double.IsFinite(means[day]);
            meansBefore[day + 1] = meansBefore[day] + (read ? means[day] : 0);
            readBefore[day + 1] = readBefore[day] + (read ? 1 : 0);
            unknownBefore[day + 1] = unknownBefore[day] + (states[day] == DayState.Unknown ? 1 : 0);
        }

        Array.Fill(firsts, log.First);
        Array.Fill(lasts, log.Last);
        var seen = new bool[count];
        foreach (var reading in log.Readings)
        {
            var day = reading.Day - FirstDay;
            if (!seen[day])
            {
                firsts[day] = reading.Moment;
                seen[day] = true;
            }

            lasts[day] = reading.Moment;
        }
    }

    private int FirstDay { get; }

    private int Count => states.Length;

    private DayState State(int day) => states[day - FirstDay];

    /// <summary>
    /// The mean over days, of each the mean of the probe for which it is lowest; days without a reading are left out, and
    /// without any it is negative infinity.
    /// </summary>
    public double Mean(int from, int to)
    {
        var (a, b) = (from - FirstDay, to - FirstDay + 1);
        var read = readBefore[b] - readBefore[a];
        return read == 0 ? double.NegativeInfinity : (meansBefore[b] - meansBefore[a]) / read;
    }

    /// <summary>Whether a day has a reading.</summary>
    public bool HasReading(int day) => readBefore[day - FirstDay + 1] > readBefore[day - FirstDay];

    /// <summary>Whether a stretch of days has one that is not wholly known.</summary>
    public bool HasUnknown(int from, int to) =>
        unknownBefore[to - FirstDay + 1] > unknownBefore[from - FirstDay];

    /// <summary>The first reading of a day; of the record where the day has none.</summary>
    public LogMoment First(int day) => firsts[day - FirstDay];

    /// <summary>The last reading of a day; of the record where the day has none.</summary>
    public LogMoment Last(int day) => lasts[day - FirstDay];

    /// <summary>Days that are hot.</summary>
    /// <param name="gapsHot">Whether unknown days count.</param>
    public IEnumerable<int> HotDays(bool gapsHot) =>
        Enumerable.Range(FirstDay, Count).Where(d => IsHot(d, gapsHot));

    /// <summary>The runs of hot days, from and to included.</summary>
    /// <param name="gapsHot">Whether unknown days count as hot and gaps do not break a run.</param>
    public IEnumerable<(int From, int To)> Runs(bool gapsHot)
    {
        int? from = null;
        for (var day = FirstDay; day < FirstDay + Count; day++)
        {
            if (!IsHot(day, gapsHot))
            {
                continue;
            }

            from ??= day;
            var ends =
                day + 1 == FirstDay + Count
                || !IsHot(day + 1, gapsHot)
                || (!gapsHot && broken[day - FirstDay]);
            if (ends)
            {
                yield return (from.Value, day);
                from = null;
            }
        }
    }

    private bool IsHot(int day, bool gapsHot) =>
        State(day) == DayState.Hot || (gapsHot && State(day) == DayState.Unknown);
}
