using System.Collections.Immutable;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using NodaTime;
using UnitsNet;

namespace Heapwright.App.Diary;

/// <summary>Puts entries into the diary of a heap, whatever the way they came: checked, judged, kept, and then answered.</summary>
/// <param name="items">Where the heaps are kept.</param>
/// <param name="diary">Where the diaries are kept.</param>
/// <param name="photos">Where the images are kept.</param>
/// <param name="gate">The gates of the heaps.</param>
/// <param name="clock">The clock.</param>
public sealed class RecordEntries(
    IItemStore items,
    IDiaryStore diary,
    IPhotoStore photos,
    IHeapGate gate,
    TimeProvider clock
)
{
    /// <summary>The most entries that are taken at once.</summary>
    public const int MostAtOnce = 5000;

    private static readonly DateTimeOffset Earliest = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly TimeSpan Ahead = TimeSpan.FromDays(1);

    /// <summary>The clock.</summary>
    public TimeProvider Clock => clock;

    /// <summary>How an entry that comes now for a heap comes; null where there is no such heap.</summary>
    /// <param name="heapId">The heap.</param>
    /// <param name="way">By what way.</param>
    /// <param name="cancel">Gives up.</param>
    /// <param name="by">Who sends it, by the name of the device; empty where nobody says.</param>
    public async Task<Arrival?> Arrive(
        Guid heapId,
        EntryWay way,
        CancellationToken cancel,
        string by = ""
    ) =>
        await items.Find<KeptHeap>(heapId, cancel) is { } heap
            ? new Arrival(heapId, way, clock.GetUtcNow(), heap.Zone, by)
            : null;

    /// <summary>Puts entries into the diary of one heap.</summary>
    /// <param name="heapId">The heap.</param>
    /// <param name="entries">The entries; at most <see cref="MostAtOnce"/>.</param>
    /// <param name="cancel">Gives up.</param>
    /// <param name="by">Who sends them, by the name of the device; empty to leave what they say.</param>
    /// <returns>What became of each, in their order; what is answered as kept has reached the disk.</returns>
    public async Task<ImmutableArray<EntryOutcome>> Record(
        Guid heapId,
        IReadOnlyList<DiaryEntry> entries,
        CancellationToken cancel,
        string by = ""
    )
    {
        ArgumentNullException.ThrowIfNull(by);
        return await Record(
            heapId,
            by.Length > 0 ? [.. entries.Select(e => e with { By = by })] : entries,
            new Sitting(),
            cancel
        );
    }

    /// <summary>Puts entries into the diary of one heap, one lot of many that follow each other.</summary>
    /// <param name="heapId">The heap.</param>
    /// <param name="entries">The entries; at most <see cref="MostAtOnce"/>.</param>
    /// <param name="sitting">What was known after the lot before; the same one for all lots.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>What became of each, in their order; what is answered as kept has reached the disk.</returns>
    internal async Task<ImmutableArray<EntryOutcome>> Record(
        Guid heapId,
        IReadOnlyList<DiaryEntry> entries,
        Sitting sitting,
        CancellationToken cancel
    )
    {
        ArgumentNullException.ThrowIfNull(entries);
        if (entries.Count > MostAtOnce)
        {
            throw new ArgumentException(
                $"{entries.Count} entries at once; at most {MostAtOnce} are taken",
                nameof(entries)
            );
        }

        var outcomes = new EntryOutcome?[entries.Count];
        if (await items.Find<KeptHeap>(heapId, cancel) is not { } heap)
        {
            return [.. entries.Select(e => EntryOutcome.Refused(e.Id, "readings.heap_unknown"))];
        }

        var mostWater = new Lazy<double>(() => WaterLimit.Litres(heap));
        for (var i = 0; i < entries.Count; i++)
        {
            outcomes[i] = await Fault(heapId, entries[i], mostWater, cancel);
        }

        int[] good = [.. Enumerable.Range(0, entries.Count).Where(i => outcomes[i] is null)];
        if (good.Length > 0)
        {
            using var inside = await gate.Enter(heapId, cancel);
            var judged = await Judge(heap, [.. good.Select(i => entries[i])], sitting, cancel);
            var kept = await diary.Append(heapId, judged, cancel);
            for (var i = 0; i < good.Length; i++)
            {
                outcomes[good[i]] =
                    kept[i].Status == AppendStatus.Refused
                        ? EntryOutcome.Refused(kept[i].Id, "readings.id_taken")
                        : new EntryOutcome(
                            kept[i].Id,
                            kept[i].Status,
                            Verdict: kept[i].Status == AppendStatus.Kept ? judged[i].Verdict : null
                        );
            }
        }

        return [.. outcomes.Select(o => o!)];
    }

    private async Task<EntryOutcome?> Fault(
        Guid heapId,
        DiaryEntry entry,
        Lazy<double> mostWater,
        CancellationToken cancel
    )
    {
        if (entry.HeapId != heapId)
        {
            return EntryOutcome.Refused(entry.Id, "readings.other_heap");
        }

        var said = entry is CorrectionEntry { Replacement: { } inside } ? inside : entry;
        if (
            said.At < Earliest
            || said.At > entry.ReceivedAt + Ahead
            || entry.At < Earliest
            || entry.At > entry.ReceivedAt + Ahead
        )
        {
            return EntryOutcome.Refused(entry.Id, "readings.time_range", EntryJson.Time(said.At));
        }

        return said switch
        {
            CorrectionEntry { IsWhole: false } => EntryOutcome.Refused(
                entry.Id,
                "readings.correction_broken"
            ),
            EventEntry { Deed: WateredDeed watered } when watered.Litres > mostWater.Value =>
                EntryOutcome.Refused(
                    entry.Id,
                    "readings.water_too_much",
                    Volume.FromLiters(watered.Litres),
                    Volume.FromLiters(mostWater.Value)
                ),
            SignEntry { IsEmpty: true } => EntryOutcome.Refused(entry.Id, "readings.sign_empty"),
            PhotoEntry photo when !await photos.Has(photo.ContentHash, cancel) =>
                EntryOutcome.Refused(entry.Id, "readings.photo_missing", photo.ContentHash),
            _ => null,
        };
    }

    // Each is held against what is known of the days before it, and against those that come with it.
    private async Task<ImmutableArray<JudgedEntry>> Judge(
        KeptHeap heap,
        ImmutableArray<DiaryEntry> entries,
        Sitting sitting,
        CancellationToken cancel
    )
    {
        DateTimeOffset[] readings =
        [
            .. entries.Select(Reading).OfType<TemperatureEntry>().Select(r => r.At),
        ];
        if (readings.Length == 0)
        {
            return [.. entries.Select(e => new JudgedEntry(e, null))];
        }

        // What the lot before has left serves as long as time goes on; otherwise it is read anew.
        var (first, last) = (readings.Min(), readings.Max());
        var history =
            sitting.History is { Newest: { } newest } && newest <= first
                ? sitting.History
                : new ReadingHistory { BuiltAt = heap.BuiltAt.ToDateTimeOffset() };
        var from = history.Newest?.AddMilliseconds(1) ?? first - Plausibility.Memory;
        var waiting = new Queue<DiaryEntry>(await Known(heap.Id, entries, from, last, cancel));
        var verdicts = new Dictionary<Guid, PlausibilityVerdict>();
        foreach (var entry in entries.OrderBy(e => Reading(e)?.At ?? e.At))
        {
            var at = Reading(entry)?.At ?? entry.At;
            while (waiting.TryPeek(out var next) && next.At <= at)
            {
                history.Add(waiting.Dequeue());
            }

            if (Reading(entry) is { } reading)
            {
                verdicts[entry.Id] = Plausibility.Judge(reading, history);
            }

            // What nobody believes speaks neither for nor against what comes after it.
            if (
                entry is not CorrectionEntry
                && (!verdicts.TryGetValue(entry.Id, out var verdict) || verdict.IsBelieved)
            )
            {
                history.Add(entry);
            }
        }

        history.Forget(last - Plausibility.Memory);
        sitting.History = history;
        return [.. entries.Select(e => new JudgedEntry(e, verdicts.GetValueOrDefault(e.Id)))];
    }

    // What stands in a stretch of the diary. What is corrected now speaks neither for nor against its correction.
    private async Task<IEnumerable<DiaryEntry>> Known(
        Guid heapId,
        ImmutableArray<DiaryEntry> entries,
        DateTimeOffset from,
        DateTimeOffset to,
        CancellationToken cancel
    )
    {
        var before = await diary.Read(
            heapId,
            Instant.FromDateTimeOffset(from),
            Instant.FromDateTimeOffset(to),
            cancel
        );
        var ids = entries.Select(e => e.Id).ToHashSet();
        var doubted = before
            .Where(b => b.Verdict is { IsBelieved: false })
            .Select(b => b.Entry.Id)
            .ToHashSet();
        var corrected = entries.OfType<CorrectionEntry>().Select(c => c.Corrects).ToHashSet();
        return HeapDiary
            .Of(before.Select(b => b.Entry).Where(e => !ids.Contains(e.Id)))
            .Standing.Where(s =>
                !corrected.Contains(s.First.Id) && !s.Corrections.Any(c => corrected.Contains(c.Id))
            )
            .Select(s => s.Entry)
            .Where(e => e.At >= from && !doubted.Contains(e.Id));
    }

    private static TemperatureEntry? Reading(DiaryEntry entry) =>
        entry as TemperatureEntry ?? (entry as CorrectionEntry)?.Replacement as TemperatureEntry;

    /// <summary>What is known after a lot of entries, for the next one.</summary>
    internal sealed class Sitting
    {
        /// <summary>What readings are held against; null before the first.</summary>
        public ReadingHistory? History { get; set; }
    }
}
