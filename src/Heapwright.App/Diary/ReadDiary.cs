using System.Collections.Immutable;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>Reads the diaries of the heaps.</summary>
/// <param name="items">Where the heaps are kept.</param>
/// <param name="diary">Where the diaries are kept.</param>
public sealed class ReadDiary(IItemStore items, IDiaryStore diary)
{
    private static readonly Duration Recent = Duration.FromDays(21);

    /// <summary>All heaps with the number of their entries, the newest first.</summary>
    /// <param name="cancel">Gives up.</param>
    public async Task<ImmutableArray<(KeptHeap Heap, long Entries)>> Heaps(CancellationToken cancel)
    {
        var counts = (await diary.Heaps(cancel)).ToDictionary(h => h.HeapId, h => h.Entries);
        return
        [
            .. (await items.All<KeptHeap>(cancel))
                .OrderByDescending(h => h.BuiltAt)
                .Select(h => (h, counts.GetValueOrDefault(h.Id))),
        ];
    }

    /// <summary>One heap with its diary; null where there is no such heap.</summary>
    /// <param name="heapId">The heap.</param>
    /// <param name="from">Entries before this are left out, corrections not; null for all.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<HeapRecord?> Of(Guid heapId, Instant? from, CancellationToken cancel) =>
        await items.Find<KeptHeap>(heapId, cancel) is { } heap
            ? new HeapRecord(
                heap,
                await diary.Read(heapId, from, null, cancel),
                (await items.Find<Site>(Site.OnlyId, cancel))?.Air,
                await items.All<Bay>(cancel)
            )
            : null;

    /// <summary>
    /// The heaps that stand in bays, each by its bay: the last that was built or moved there, with its diary of the last weeks. A
    /// bay is free where none was, where it is no longer followed, and where it was moved away.
    /// </summary>
    /// <param name="now">The present.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<ImmutableDictionary<Guid, HeapRecord>> InBays(
        Instant now,
        CancellationToken cancel
    ) =>
        (await Followed(now, cancel))
            .Where(r => r.Place.Bay is not null)
            .ToImmutableDictionary(r => r.Place.Bay!.Value);

    /// <summary>
    /// The heaps that are followed, with their diaries of the last weeks: the last that came into each bay, and all that
    /// stand in none. Of a heap that was ever moved the whole diary is read.
    /// </summary>
    /// <param name="now">The present.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<ImmutableArray<HeapRecord>> Followed(Instant now, CancellationToken cancel)
    {
        var moved = (await diary.EverMoved(cancel)).ToHashSet();
        var came = new List<(Guid? Bay, Instant Since, KeptHeap? Heap, HeapRecord? Read)>();
        foreach (var heap in await items.All<KeptHeap>(cancel))
        {
            var read = moved.Contains(heap.Id) ? await Whole(heap, cancel) : null;
            var (bay, since) = read?.Place ?? (heap.BayId, heap.BuiltAt);
            came.Add((bay, since, heap, read));
            if (bay != heap.BayId)
            {
                // Whatever was in its first bay before it is gone from there too.
                came.Add((heap.BayId, heap.BuiltAt, null, null));
            }
        }

        var followed = ImmutableArray.CreateBuilder<HeapRecord>();
        foreach (var there in came.GroupBy(c => c.Bay))
        {
            var last = there.Key is null ? there : there.OrderBy(c => c.Since).TakeLast(1);
            foreach (var (_, _, heap, read) in last)
            {
                if (
                    heap is not null
                    && (read ?? await Recently(heap, now, cancel)) is { IsClosed: false } record
                )
                {
                    followed.Add(record);
                }
            }
        }

        return followed.ToImmutable();
    }

    // Where nothing was noted of late, the end may stand further back.
    private async Task<HeapRecord> Recently(KeptHeap heap, Instant now, CancellationToken cancel)
    {
        var record = new HeapRecord(heap, await diary.Read(heap.Id, now - Recent, null, cancel));
        return record.Diary.Standing.Count > 0 ? record : await Whole(heap, cancel);
    }

    private async Task<HeapRecord> Whole(KeptHeap heap, CancellationToken cancel) =>
        new(heap, await diary.Read(heap.Id, null, null, cancel));

    /// <summary>The heap that a word names: its id, the beginning of its id, or its name.</summary>
    /// <param name="word">The word.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>All that fit; one if the word is clear.</returns>
    public async Task<ImmutableArray<KeptHeap>> Named(string word, CancellationToken cancel)
    {
        var all = await items.All<KeptHeap>(cancel);
        ImmutableArray<KeptHeap> same =
        [
            .. all.Where(h => string.Equals(h.Name, word, StringComparison.OrdinalIgnoreCase)),
        ];
        return !same.IsEmpty
            ? same
            :
            [
                .. all.Where(h =>
                    word.Length >= 4
                    && (
                        h.Id.ToString("D").StartsWith(word, StringComparison.OrdinalIgnoreCase)
                        || h.Id.ToString("N").StartsWith(word, StringComparison.OrdinalIgnoreCase)
                    )
                ),
            ];
    }

    /// <summary>Goes through the chain of a diary: whether every entry is as it was written.</summary>
    /// <param name="heapId">The heap.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<ChainCheck> Verify(Guid heapId, CancellationToken cancel)
    {
        var head = HashChain.Start;
        long count = 0;
        await foreach (var link in diary.Chain(heapId).WithCancellation(cancel))
        {
            count++;
            if (
                link.Place != count
                || !string.Equals(
                    HashChain.Link(head, link.Json),
                    link.Hash,
                    StringComparison.Ordinal
                )
                || !IsItself(link)
            )
            {
                return new ChainCheck(count, count, head);
            }

            head = link.Hash;
        }

        return new ChainCheck(count, null, head);
    }

    // What the table says beside the text is not in the hash, so it is held against the text.
    private static bool IsItself(ChainedEntry link)
    {
        try
        {
            var entry = EntryReader.Recorded(link.Json).Entry;
            return entry.Id == link.EntryId
                && entry.HeapId == link.HeapId
                && entry.At.ToUnixTimeMilliseconds() == link.AtUnixMs;
        }
        catch (Contract.InputProblem)
        {
            return false;
        }
    }
}
