namespace Heapwright.Core.Readings;

/// <summary>A note in the person's own words.</summary>
public sealed record NoteEntry : DiaryEntry
{
    /// <summary>The words; 1 to 2000 characters.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are none, or too many.</exception>
    public required string Text
    {
        get;
        init => field = EntryLimits.Text(value, 1, EntryLimits.LongestNote, nameof(Text));
    }
}
