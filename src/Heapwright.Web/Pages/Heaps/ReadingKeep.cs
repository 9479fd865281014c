using Heapwright.App.Changes;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Heapwright.Web.Photos;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Pages.Heaps;

/// <summary>Keeps what was tapped beside a heap, whether a form brought it or a phone that had no connection.</summary>
internal static class ReadingKeep
{
    /// <summary>The photo that came with a form; null, and perhaps a refusal, where there is none.</summary>
    /// <param name="form">The form.</param>
    /// <param name="typed">Takes the refusal.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task<Photo?> PhotoOf(
        IFormCollection form,
        Posted typed,
        CancellationToken cancel
    )
    {
        if (form.Files.GetFile("photo") is not { Length: > 0 } file)
        {
            return null;
        }

        if (file.Length > PhotoIntake.LargestBytes)
        {
            typed.Refuse(
                Refusal.Of("photo", "readings.photo_too_large", PhotoIntake.LargestBytes >> 20)
            );
            return null;
        }

        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, cancel);
        if (PhotoIntake.Take(bytes.ToArray()) is { } photo)
        {
            return photo;
        }

        typed.Refuse(Refusal.Of("photo", "readings.photo_unreadable"));
        return null;
    }

    /// <summary>Puts the entries of one tap on "save" into the diary, all or none; again is as good as once.</summary>
    /// <param name="desk">The diaries.</param>
    /// <param name="heap">The heap.</param>
    /// <param name="entries">The entries.</param>
    /// <param name="with">What is noted beside them if they are new, the photo of a photo entry among them, and who sends them.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>What became of them: one for all.</returns>
    public static async Task<EntryOutcome> Keep(
        DiaryDesk desk,
        KeptHeap heap,
        IReadOnlyList<DiaryEntry> entries,
        (NoteEntry? Note, Photo? Photo, string By) with,
        CancellationToken cancel
    )
    {
        if (await desk.Repeats.StandAlready(entries, cancel))
        {
            return new EntryOutcome(entries[0].Id, AppendStatus.AlreadyThere);
        }

        if (with.Photo is { } photo)
        {
            await desk.Photos.Keep(photo, cancel);
        }

        var outcomes = await desk.Entries.Record(
            heap.Id,
            with.Note is { } note ? [.. entries, note] : entries,
            cancel,
            with.By
        );
        // The same may have come by two ways at once; then the one that was later finds it there.
        return outcomes.FirstOrDefault(o => o.Status == AppendStatus.Refused) is not { } refused
                ? outcomes[0]
            : await desk.Repeats.StandAlready(entries, cancel)
                ? new EntryOutcome(entries[0].Id, AppendStatus.AlreadyThere)
            : refused;
    }
}
