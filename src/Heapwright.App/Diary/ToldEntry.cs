using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;

namespace Heapwright.App.Diary;

/// <summary>What a diary tells, by the day of the heap.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Day">Days since building.</param>
internal sealed record ToldEntry(DiaryEntry Entry, double Day)
{
    /// <summary>What was done; null where it tells of something else.</summary>
    public HeapDeed? Deed => (Entry as EventEntry)?.Deed;

    /// <summary>What stands in a diary from building until a day, the earliest first.</summary>
    /// <param name="record">The heap with its diary.</param>
    /// <param name="today">The day, days since building.</param>
    public static ToldEntry[] Of(HeapRecord record, double today) =>
        [
            .. record
                .Diary.Standing.Select(s => new ToldEntry(s.Entry, record.DayOf(s.Entry.At)))
                .Where(t => t.Day >= 0 && t.Day <= today),
        ];
}
