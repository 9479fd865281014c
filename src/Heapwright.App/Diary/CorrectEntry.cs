using System.Collections.Immutable;
using Heapwright.App.Ports;
using Heapwright.Core.Readings;

namespace Heapwright.App.Diary;

/// <summary>Corrects what stands in a diary, by a new entry; the old one stays where it is.</summary>
/// <param name="diary">Where the diaries are kept.</param>
/// <param name="entries">The way into the diary.</param>
public sealed class CorrectEntry(IDiaryStore diary, RecordEntries entries)
{
    /// <summary>Strikes an entry out.</summary>
    /// <param name="id">The id of the correction.</param>
    /// <param name="corrects">The entry, or an earlier correction of it.</param>
    /// <param name="arrival">How the correction came.</param>
    /// <param name="reason">Why; may be empty.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<EntryOutcome> StrikeOut(
        Guid id,
        Guid corrects,
        Arrival arrival,
        string reason,
        CancellationToken cancel
    ) => Put(id, corrects, arrival, _ => null, reason, cancel);

    /// <summary>Puts another temperature in the place of a reading.</summary>
    /// <param name="id">The id of the correction.</param>
    /// <param name="corrects">The reading, or an earlier correction of it.</param>
    /// <param name="arrival">How the correction came.</param>
    /// <param name="change">The reading as it should be, from what it is.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<EntryOutcome> Reading(
        Guid id,
        Guid corrects,
        Arrival arrival,
        Func<TemperatureEntry, TemperatureEntry> change,
        CancellationToken cancel
    ) => Put(id, corrects, arrival, e => e is TemperatureEntry t ? change(t) : e, "", cancel);

    /// <summary>Takes the other unit for a reading, as the question beside it suggests.</summary>
    /// <param name="id">The id of the correction.</param>
    /// <param name="corrects">The reading.</param>
    /// <param name="arrival">How the correction came.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<EntryOutcome> OtherUnit(
        Guid id,
        Guid corrects,
        Arrival arrival,
        CancellationToken cancel
    ) =>
        (await diary.Find(corrects, cancel))?.Verdict?.Suggested is { } meant
            ? await Reading(
                id,
                corrects,
                arrival,
                r => r with { Temperature = meant, GivenInFahrenheit = !r.GivenInFahrenheit },
                cancel
            )
            : EntryOutcome.Refused(id, "readings.no_question");

    private async Task<EntryOutcome> Put(
        Guid id,
        Guid corrects,
        Arrival arrival,
        Func<DiaryEntry, DiaryEntry?> change,
        string reason,
        CancellationToken cancel
    )
    {
        ArgumentNullException.ThrowIfNull(arrival);
        var there = (await diary.Find(corrects, cancel))?.Entry;
        if (there is null || there.HeapId != arrival.HeapId || corrects == id)
        {
            return EntryOutcome.Refused(id, "readings.entry_unknown", corrects);
        }

        var old = there is CorrectionEntry { Replacement: { } inside } ? inside : there;
        var correction = new CorrectionEntry
        {
            Id = id,
            HeapId = arrival.HeapId,
            At = arrival.At,
            Zone = arrival.Zone,
            ReceivedAt = arrival.At,
            Way = arrival.Way,
            Corrects = corrects,
            Replacement = change(old) is { } replacement
                ? replacement with
                {
                    Id = id,
                    AtIsArrival = false,
                    ReceivedAt = arrival.At,
                    Way = arrival.Way,
                }
                : null,
            Reason = reason,
        };
        ImmutableArray<EntryOutcome> outcomes = await entries.Record(
            arrival.HeapId,
            [correction],
            cancel
        );
        return outcomes[0];
    }
}
