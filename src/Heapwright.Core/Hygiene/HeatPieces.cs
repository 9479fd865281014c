namespace Heapwright.Core.Hygiene;

/// <summary>
/// The times at which every probe is shown to be hot. Between two readings of a probe that are no gap the colder one
/// counts, so such a time begins and ends at a reading.
/// </summary>
internal static class HeatPieces
{
    /// <summary>The pieces in order of time.</summary>
    /// <param name="log">The record.</param>
    /// <param name="band">What is hot.</param>
    /// <param name="gapsHot">Whether gaps are taken as hot, to see whether they could matter; otherwise as not shown.</param>
    public static List<HeatPiece> Of(HeatLog log, HeatBand band, bool gapsHot)
    {
        var all = OfProbe(log, 0, band, gapsHot);
        for (var p = 1; p < log.Probes.Length && all.Count > 0; p++)
        {
            all = Both(all, OfProbe(log, p, band, gapsHot));
        }

        return all;
    }

    private static List<HeatPiece> OfProbe(HeatLog log, int probe, HeatBand band, bool gapsHot)
    {
        var own = log.ByProbe[probe];
        var pieces = new List<HeatPiece>();
        LogMoment? begun = gapsHot && HeatLog.IsGap(log.First, own[0].Moment) ? log.First : null;
        for (var i = 0; i < own.Length; i++)
        {
            var here = own[i].Moment;
            var hot = band.Holds(own[i].Celsius);
            var last = i + 1 == own.Length;
            var next = last ? log.Last : own[i + 1].Moment;
            var goesOn = HeatLog.IsGap(here, next)
                ? gapsHot
                : !last && hot && band.Holds(own[i + 1].Celsius);
            // A cold reading ends a piece even where gaps before and after it could be hot.
            if (begun is { } from && !(hot && goesOn))
            {
                pieces.Add(new HeatPiece(from, here));
                begun = null;
            }

            if (goesOn)
            {
                begun ??= here;
            }
        }

        if (begun is { } open)
        {
            pieces.Add(new HeatPiece(open, log.Last));
        }

        return pieces;
    }

    // The common times of two lists; pieces that only touch stay two, for a cold reading parts them.
    private static List<HeatPiece> Both(List<HeatPiece> left, List<HeatPiece> right)
    {
        var both = new List<HeatPiece>();
        for (int i = 0, j = 0; i < left.Count && j < right.Count; )
        {
            var from = Later(left[i].From, right[j].From);
            var to = Earlier(left[i].To, right[j].To);
            if (to.Hours > from.Hours)
            {
                both.Add(new HeatPiece(from, to));
            }

            if (left[i].To.Hours <= right[j].To.Hours)
            {
                i++;
            }
            else
            {
                j++;
            }
        }

        return both;
    }

    private static LogMoment Later(LogMoment a, LogMoment b) => a.Hours >= b.Hours ? a : b;

    private static LogMoment Earlier(LogMoment a, LogMoment b) => a.Hours <= b.Hours ? a : b;
}
