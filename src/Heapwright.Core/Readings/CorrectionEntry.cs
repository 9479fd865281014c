namespace Heapwright.Core.Readings;

/// <summary>
/// Supersedes another entry of the same heap: puts one in its place, or strikes it out. A correction that is struck out
/// itself counts as never made; one that is replaced puts the new entry in the place of what it corrected.
/// </summary>
public sealed record CorrectionEntry : DiaryEntry
{
    /// <summary>The entry that is superseded; it may be a correction, and may arrive later.</summary>
    /// <exception cref="ArgumentException">It is empty.</exception>
    public required Guid Corrects
    {
        get;
        init =>
            field =
                value != Guid.Empty
                    ? value
                    : throw new ArgumentException("the id is empty", nameof(value));
    }

    /// <summary>
    /// What stands in its place, with the id and the heap of this correction (see <see cref="IsWhole"/>); null if it is
    /// struck out.
    /// </summary>
    public DiaryEntry? Replacement { get; init; }

    /// <summary>Why, in the person's words; may be empty.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is too long.</exception>
    public string Reason
    {
        get;
        init => field = EntryLimits.Text(value, 0, EntryLimits.LongestNote, nameof(Reason));
    } = "";

    /// <summary>Whether its parts belong together: it corrects another one than itself, and carries no correction.</summary>
    public bool IsWhole =>
        Corrects != Id
        && Replacement switch
        {
            null => true,
            CorrectionEntry => false,
            { } inside => inside.Id == Id && inside.HeapId == HeapId,
        };
}
