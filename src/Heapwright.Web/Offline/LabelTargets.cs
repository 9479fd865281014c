using System.Collections.Immutable;
using Heapwright.App.Diary;
using Heapwright.App.Sites;

namespace Heapwright.Web.Offline;

/// <summary>Where the labels lead: a bay's to the heap that stands in it, a heap's to itself.</summary>
/// <param name="Bays">The bays with their codes and the heap in each.</param>
/// <param name="Heaps">The heaps with their codes, the newest first.</param>
internal sealed record LabelTargets(
    ImmutableArray<(string Code, Bay Bay, KeptHeap? Heap)> Bays,
    ImmutableArray<(string Code, KeptHeap Heap)> Heaps
)
{
    /// <summary>Reads them.</summary>
    /// <param name="desk">The heaps and their diaries.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task<LabelTargets> Read(DiaryDesk desk, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(desk);
        var standing = await desk.Reader.InBays(desk.Entries.Clock.Now(), cancel);
        return new LabelTargets(
            [
                .. (await desk.Items.All<Bay>(cancel)).Select(b =>
                    (LabelCode.Of(b.Id), b, standing.GetValueOrDefault(b.Id)?.Kept)
                ),
            ],
            [
                .. (await desk.Items.All<KeptHeap>(cancel))
                    .OrderByDescending(h => h.BuiltAt)
                    .Select(h => (LabelCode.Of(h.Id), h)),
            ]
        );
    }

    /// <summary>The page that a code leads to; the one that asks for the heap where the code is not known.</summary>
    /// <param name="code">The code as it came.</param>
    public string Page(string code) =>
        All()
            .FirstOrDefault(t => string.Equals(t.Code, code, StringComparison.OrdinalIgnoreCase))
            .Page
        ?? "/reading";

    /// <summary>Every code with its page.</summary>
    public IEnumerable<(string Code, string Page)> All() =>
        Bays.Select(b => (b.Code, b.Heap is { } heap ? PageOf(heap) : "/reading"))
            .Concat(Heaps.Select(h => (h.Code, PageOf(h.Heap))));

    /// <summary>The reading page of a heap.</summary>
    /// <param name="heap">The heap.</param>
    public static string PageOf(KeptHeap heap)
    {
        ArgumentNullException.ThrowIfNull(heap);
        return $"/heaps/{heap.Id:N}/reading";
    }
}
