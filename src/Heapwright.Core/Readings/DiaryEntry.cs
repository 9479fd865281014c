namespace Heapwright.Core.Readings;

/// <summary>Something that was seen at a heap, read off, or done to it. Entries are added, never changed, never taken out.</summary>
public abstract record DiaryEntry
{
    /// <summary>The longest id of a zone, in characters.</summary>
    public const int LongestZone = 60;

    /// <summary>The name it was given where it was made: an entry that comes twice counts once.</summary>
    /// <exception cref="ArgumentException">It is empty.</exception>
    public required Guid Id
    {
        get;
        init => field = Filled(value, nameof(Id));
    }

    /// <summary>The heap.</summary>
    /// <exception cref="ArgumentException">It is empty.</exception>
    public required Guid HeapId
    {
        get;
        init => field = Filled(value, nameof(HeapId));
    }

    /// <summary>When it happened, with the offset of the clock it was read off.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Whether no time was given, so that <see cref="At"/> is the moment it arrived.</summary>
    public bool AtIsArrival { get; init; }

    /// <summary>The id of the time zone, such as <c>Europe/London</c>; empty where only the offset is known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is longer than <see cref="LongestZone"/>.</exception>
    public string Zone
    {
        get;
        init => field = EntryLimits.Text(value, 0, LongestZone, nameof(Zone));
    } = "";

    /// <summary>When it reached the diary.</summary>
    public required DateTimeOffset ReceivedAt { get; init; }

    /// <summary>By what way it came.</summary>
    public required EntryWay Way { get; init; }

    /// <summary>The longest name of who sent it, in characters.</summary>
    public const int LongestBy = 60;

    /// <summary>Who sent it, by the name of the device; empty where nobody said, as from the machine itself.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is longer than <see cref="LongestBy"/>.</exception>
    public string By
    {
        get;
        init => field = EntryLimits.Text(value, 0, LongestBy, nameof(By));
    } = "";

    /// <summary>Whether another entry says the same, whenever and however it arrived.</summary>
    /// <param name="other">The other entry.</param>
    public bool SaysTheSameAs(DiaryEntry other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Said(this, other) == Said(other, this);
    }

    // A correction carries an entry, which arrived with it.
    private static DiaryEntry Said(DiaryEntry entry, DiaryEntry beside)
    {
        var said = entry with
        {
            ReceivedAt = default,
            Way = default,
            By = "",
            At = entry.AtIsArrival && beside.AtIsArrival ? default : entry.At,
        };
        return said is CorrectionEntry { Replacement: { } inside } correction
            ? correction with
            {
                Replacement = Said(inside, (beside as CorrectionEntry)?.Replacement ?? beside),
            }
            : said;
    }

    private static Guid Filled(Guid value, string name) =>
        value != Guid.Empty
            ? value
            : throw new ArgumentException("the id is empty; another one is needed", name);
}
