using System.Collections.Immutable;
using Heapwright.App.Diary;
using NodaTime;

namespace Heapwright.App.Ports;

/// <summary>
/// Where the diaries of the heaps are kept. Entries are added, never changed and never taken out; each is chained to
/// the one before it, so that a later change shows.
/// </summary>
public interface IDiaryStore
{
    /// <summary>
    /// Adds entries to the diary of a heap, all of one call or, if it throws, none. What is answered as kept has reached
    /// the disk. An entry whose id is there already is not added again.
    /// </summary>
    /// <param name="heapId">The heap.</param>
    /// <param name="entries">The entries, in the order in which they are chained.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>What became of each, in their order.</returns>
    Task<ImmutableArray<AppendOutcome>> Append(
        Guid heapId,
        IReadOnlyList<JudgedEntry> entries,
        CancellationToken cancel
    );

    /// <summary>The entries of a heap in the order in which they came, with all its corrections.</summary>
    /// <param name="heapId">The heap.</param>
    /// <param name="from">The earliest time of an entry that is no correction; null for all.</param>
    /// <param name="to">The latest such time; null for all.</param>
    /// <param name="cancel">Gives up.</param>
    Task<ImmutableArray<JudgedEntry>> Read(
        Guid heapId,
        Instant? from,
        Instant? to,
        CancellationToken cancel
    );

    /// <summary>The entries of a heap as they are chained, one by one.</summary>
    /// <param name="heapId">The heap.</param>
    IAsyncEnumerable<ChainedEntry> Chain(Guid heapId);

    /// <summary>The entry of this id, whatever its heap; null where there is none.</summary>
    /// <param name="entryId">The id.</param>
    /// <param name="cancel">Gives up.</param>
    Task<JudgedEntry?> Find(Guid entryId, CancellationToken cancel);

    /// <summary>The heaps that have a diary, with the number of their entries.</summary>
    /// <param name="cancel">Gives up.</param>
    Task<ImmutableArray<(Guid HeapId, long Entries)>> Heaps(CancellationToken cancel);

    /// <summary>The heaps that were once moved to another bay, by an entry that stands or one that was struck out since.</summary>
    /// <param name="cancel">Gives up.</param>
    Task<ImmutableArray<Guid>> EverMoved(CancellationToken cancel);
}
