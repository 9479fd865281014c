using Heapwright.App.Ports;
using Heapwright.Core.Readings;

namespace Heapwright.App.Diary;

/// <summary>
/// Tells a repeat from a clash. What a phone sends again was stored with a time that the site had settled, and with a
/// photo that it had drawn anew; apart from these a repeat says the same.
/// </summary>
/// <param name="diary">Where the diaries are kept.</param>
public sealed class RepeatedEntries(IDiaryStore diary)
{
    /// <summary>Whether all of these stand in the diary already, whatever their time.</summary>
    /// <param name="entries">What came.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<bool> StandAlready(
        IReadOnlyList<DiaryEntry> entries,
        CancellationToken cancel
    )
    {
        ArgumentNullException.ThrowIfNull(entries);
        var count = 0;
        foreach (var entry in entries)
        {
            if (
                await diary.Find(entry.Id, cancel) is not { } kept
                || !AtItsTime(entry, kept.Entry).SaysTheSameAs(kept.Entry)
            )
            {
                return false;
            }

            count++;
        }

        return count > 0;
    }

    private static DiaryEntry AtItsTime(DiaryEntry entry, DiaryEntry kept)
    {
        var same = entry with { At = kept.At, AtIsArrival = kept.AtIsArrival };
        return (same, kept) switch
        {
            (PhotoEntry photo, PhotoEntry drawn) => photo with { ContentHash = drawn.ContentHash },
            (NoteEntry note, NoteEntry told) => note with { Text = told.Text },
            _ => same,
        };
    }
}
