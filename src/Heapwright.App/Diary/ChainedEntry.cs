namespace Heapwright.App.Diary;

/// <summary>An entry as it is kept: its text and its link to the one before it.</summary>
/// <param name="Place">Its place in the diary of the heap, from 1 on.</param>
/// <param name="EntryId">Its id, as the table has it.</param>
/// <param name="HeapId">Its heap, as the table has it.</param>
/// <param name="AtUnixMs">Its time, as the table has it.</param>
/// <param name="Json">The entry, as <see cref="EntryJson"/> writes it.</param>
/// <param name="Hash">The SHA-256 over the hash before it and the text; see <see cref="HashChain"/>.</param>
public sealed record ChainedEntry(
    long Place,
    Guid EntryId,
    Guid HeapId,
    long AtUnixMs,
    string Json,
    string Hash
);
