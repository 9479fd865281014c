using System.Text.Json;
using System.Text.Json.Nodes;
using Heapwright.App.Changes;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>Starts to follow a heap: what it was built of is kept, and its diary begins.</summary>
/// <param name="recorder">The way to the record of the site.</param>
/// <param name="entries">The way into the diary.</param>
public sealed class StartHeap(SiteRecorder recorder, RecordEntries entries)
{
    /// <summary>Starts a heap.</summary>
    /// <param name="heap">The heap.</param>
    /// <param name="way">By what way it came.</param>
    /// <param name="cancel">Gives up.</param>
    /// <param name="takesStock">Whether what went in is taken from the stock, as one act with the heap.</param>
    public async Task<Outcome> Start(
        KeptHeap heap,
        EntryWay way,
        CancellationToken cancel,
        bool takesStock = false
    )
    {
        ArgumentNullException.ThrowIfNull(heap);
        var now = recorder.Clock.Now();
        if (
            heap.BuiltAt > now + Duration.FromDays(1)
            || heap.BuiltAt < now - Duration.FromDays(3650)
        )
        {
            return Outcome.Refused(Refusal.Of("built", "readings.built_range"));
        }

        if (heap.Faults().FirstOrDefault() is { } fault)
        {
            return Outcome.Refused(fault);
        }

        var used = UsedLoad.Of(heap, await recorder.Store.All<StockEntry>(cancel));
        var outcome = await recorder.Put(
            "acts.heap_started",
            [heap.Name],
            [heap, .. takesStock ? used.Select(u => u.Rest).OfType<StockEntry>() : []],
            cancel
        );
        if (!outcome.IsDone)
        {
            return outcome;
        }

        await entries.Record(heap.Id, [Built(heap, used, recorder.Clock.GetUtcNow(), way)], cancel);
        return outcome with { ItemId = heap.Id };
    }

    /// <summary>The entry a diary begins with.</summary>
    /// <param name="heap">The heap.</param>
    /// <param name="used">The loads it was built of.</param>
    /// <param name="receivedAt">When it came.</param>
    /// <param name="way">By what way it came.</param>
    public static EventEntry Built(
        KeptHeap heap,
        IEnumerable<UsedLoad> used,
        DateTimeOffset receivedAt,
        EntryWay way
    )
    {
        ArgumentNullException.ThrowIfNull(heap);
        return new EventEntry
        {
            Id = DeterministicIds.Of(heap.Id, "built"),
            HeapId = heap.Id,
            At = heap.BuiltAt.InZone(heap.TimeZone()).ToDateTimeOffset(),
            Zone = heap.Zone,
            ReceivedAt = receivedAt,
            Way = way,
            Deed = new BuiltDeed { Loads = [.. used.Select(u => u.Stuff)] },
        };
    }

    /// <summary>The heap that was built by a sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="bay">The bay it stands in; null for none of the site's.</param>
    /// <param name="id">The id it gets.</param>
    /// <param name="builtAt">When it was finished.</param>
    /// <param name="zone">The id of the zone.</param>
    public static KeptHeap FromSheet(
        SavedSheet sheet,
        Bay? bay,
        Guid id,
        Instant builtAt,
        string zone
    )
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return new KeptHeap
        {
            Id = id,
            Name = sheet.Name,
            BayId = bay?.Id,
            SheetId = sheet.Id,
            BuiltAt = builtAt,
            Zone = zone,
            Question = ToElement(SheetHeap.Question(sheet, bay)),
        };
    }

    /// <summary>JSON as items keep it.</summary>
    /// <param name="json">The JSON.</param>
    public static JsonElement ToElement(JsonNode json) => JsonSerializer.SerializeToElement(json);
}
