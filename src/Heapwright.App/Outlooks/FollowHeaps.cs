using System.Collections.Immutable;
using Heapwright.App.Diary;
using Heapwright.App.Ports;
using Heapwright.App.Sites;

namespace Heapwright.App.Outlooks;

/// <summary>Tells of all heaps that are followed what each asks next.</summary>
/// <param name="items">Where the things of the site are kept.</param>
/// <param name="reader">Reads the diaries.</param>
/// <param name="forecasts">Where the forecasts are kept.</param>
/// <param name="clock">The clock.</param>
public sealed class FollowHeaps(
    IItemStore items,
    ReadDiary reader,
    IForecastStore forecasts,
    TimeProvider clock
)
{
    /// <summary>The heaps in the order in which one walks past them: by bay, then those in none, the oldest first.</summary>
    /// <param name="cancel">Gives up.</param>
    public async Task<ImmutableArray<FollowedHeap>> InOrder(CancellationToken cancel)
    {
        var now = clock.Now();
        var bays = await items.All<Bay>(cancel);
        var kept = await forecasts.Latest(cancel);
        var counts = (await reader.Heaps(cancel)).ToDictionary(h => h.Heap.Id, h => h.Entries);
        var followed = ImmutableArray.CreateBuilder<(int Place, FollowedHeap Heap)>();
        foreach (var record in await reader.Followed(now, cancel))
        {
            var id = record.Kept.Id;
            var place = bays.IndexOf(bays.FirstOrDefault(b => b.Id == record.Place.Bay)!);
            var step = HeapStep.Of(
                record,
                kept.GetValueOrDefault(id),
                counts.GetValueOrDefault(id),
                now
            );
            followed.Add(
                (
                    place < 0 ? int.MaxValue : place,
                    new FollowedHeap(record, place < 0 ? null : bays[place], step)
                )
            );
        }

        return
        [
            .. followed
                .OrderBy(f => f.Place)
                .ThenBy(f => f.Heap.Record.Kept.BuiltAt)
                .Select(f => f.Heap),
        ];
    }
}
