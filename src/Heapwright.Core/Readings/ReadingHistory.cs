using Heapwright.Core.Readings.Deeds;

namespace Heapwright.Core.Readings;

/// <summary>
/// What a reading is held against: the readings of the same heap by spot and instrument, and when something was done
/// to it. Filled in order of time it takes a moment for each entry, however many there are.
/// </summary>
public sealed class ReadingHistory
{
    private readonly Dictionary<ProbeSpot, List<TemperatureEntry>> bySpot = [];
    private readonly Dictionary<(ProbeSpot, string), List<Run>> runs = [];
    private readonly List<DateTimeOffset> deeds = [];

    /// <summary>When the heap was built; null if that is not known.</summary>
    public DateTimeOffset? BuiltAt { get; init; }

    /// <summary>A history of these entries.</summary>
    /// <param name="entries">What stands, in any order.</param>
    /// <param name="builtAt">When the heap was built.</param>
    public static ReadingHistory Of(IEnumerable<DiaryEntry> entries, DateTimeOffset? builtAt)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var history = new ReadingHistory { BuiltAt = builtAt };
        foreach (var entry in entries.OrderBy(e => e.At))
        {
            history.Add(entry);
        }

        return history;
    }

    /// <summary>The time of the newest entry taken in; null before the first.</summary>
    public DateTimeOffset? Newest { get; private set; }

    /// <summary>Takes an entry in; it must not be older than those taken in before.</summary>
    /// <param name="entry">The entry.</param>
    public void Add(DiaryEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        Newest = entry.At;
        if (entry is EventEntry { Deed: not (BuiltDeed or ClosedDeed) })
        {
            deeds.Add(entry.At);
        }

        if (entry is not TemperatureEntry reading)
        {
            return;
        }

        Of(bySpot, reading.Spot).Add(reading);
        var all = Of(runs, (reading.Spot, reading.Instrument));
        if (all.Count > 0 && Same(all[^1].Celsius, reading.Temperature.DegreesCelsius))
        {
            all[^1] = all[^1] with { Count = all[^1].Count + 1 };
        }
        else
        {
            all.Add(new Run(reading.Temperature.DegreesCelsius, reading.At, 1));
        }
    }

    /// <summary>Lets go what is older than a moment, so that a long row of readings does not pile up.</summary>
    /// <param name="before">The moment.</param>
    public void Forget(DateTimeOffset before)
    {
        deeds.RemoveAll(d => d < before);
        foreach (var readings in bySpot.Values)
        {
            readings.RemoveAll(r => r.At < before);
        }

        foreach (var all in runs.Values)
        {
            // The run that reaches into what is kept began before it.
            var old = all.FindLastIndex(r => r.Since < before);
            if (old > 0)
            {
                all.RemoveRange(0, old);
            }
        }
    }

    /// <summary>The last reading at a spot before a moment, or null.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="at">The moment.</param>
    internal TemperatureEntry? LastBefore(ProbeSpot spot, DateTimeOffset at)
    {
        if (!bySpot.TryGetValue(spot, out var readings))
        {
            return null;
        }

        var (low, high) = (0, readings.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = readings[middle].At < at ? (middle + 1, high) : (low, middle);
        }

        return low == 0 ? null : readings[low - 1];
    }

    /// <summary>For how long, and how often, the same was read before a moment, if the last reading was this one.</summary>
    /// <param name="reading">The reading that would go on with it.</param>
    internal (DateTimeOffset Since, int Count)? SameBefore(TemperatureEntry reading)
    {
        if (
            !runs.TryGetValue((reading.Spot, reading.Instrument), out var all)
            || all.FindLast(r => r.Since < reading.At) is not { } run
        )
        {
            return null;
        }

        return Same(run.Celsius, reading.Temperature.DegreesCelsius)
            ? (run.Since, run.Count)
            : null;
    }

    /// <summary>Whether something was done to the heap between two moments.</summary>
    /// <param name="from">The earlier moment.</param>
    /// <param name="to">The later moment.</param>
    internal bool WasDisturbed(DateTimeOffset from, DateTimeOffset to)
    {
        var place = deeds.BinarySearch(from);
        return (place < 0 ? ~place : place) is var next && next < deeds.Count && deeds[next] <= to;
    }

    private static List<T> Of<TKey, T>(Dictionary<TKey, List<T>> lists, TKey key)
        where TKey : notnull
    {
        if (!lists.TryGetValue(key, out var list))
        {
            lists[key] = list = [];
        }

        return list;
    }

    // Dials and sensors show tenths at best.
    private static bool Same(double one, double other) => Math.Abs(one - other) < 0.05;

    private sealed record Run(double Celsius, DateTimeOffset Since, int Count);
}
