using System.Globalization;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>
/// What was concluded from the signs of a heap, as a note in its diary, and the later answer to "did it help?". Such a
/// note is known by its id, which is made from what it says, so that the diary needs nothing new to keep it.
/// </summary>
public static class SignsConclusion
{
    /// <summary>Days after which it can be told whether it helped.</summary>
    public const int DaysUntilAsked = 4;

    /// <summary>The answers to "did it help?".</summary>
    public static IReadOnlyList<string> Answers { get; } = ["yes", "no", "cannot_tell"];

    /// <summary>The note of a conclusion.</summary>
    /// <param name="head">A note with the heap, the moment and the way; its id and words do not matter.</param>
    /// <param name="text">What was concluded.</param>
    public static NoteEntry Note(NoteEntry head, string text)
    {
        ArgumentNullException.ThrowIfNull(head);
        return head with { Id = IdOf(head.HeapId, head.At, text), Text = text };
    }

    /// <summary>The note that answers "did it help?".</summary>
    /// <param name="head">A note with the heap, the moment and the way; its id and words do not matter.</param>
    /// <param name="conclusion">The conclusion it is about.</param>
    /// <param name="text">The answer.</param>
    public static NoteEntry Answer(NoteEntry head, NoteEntry conclusion, string text)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(conclusion);
        return head with { Id = AnswerId(conclusion), Text = text };
    }

    /// <summary>
    /// The last conclusion of a heap, if it is old enough to ask about and was not answered yet; null otherwise.
    /// </summary>
    /// <param name="record">The heap with its diary.</param>
    /// <param name="now">The present.</param>
    public static NoteEntry? ToAsk(HeapRecord record, Instant now) =>
        Open(record) is { } last
        && SiteDays.Between(Instant.FromDateTimeOffset(last.At), now, record.Kept.TimeZone())
            >= DaysUntilAsked
            ? last
            : null;

    /// <summary>The last conclusion of a heap, if it was not answered yet; null otherwise.</summary>
    /// <param name="record">The heap with its diary.</param>
    public static NoteEntry? Open(HeapRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var last = record
            .Diary.Standing.Select(s => s.First)
            .OfType<NoteEntry>()
            .LastOrDefault(n => n.Id == IdOf(n.HeapId, n.At, n.Text));
        return last is not null && record.Entries.All(e => e.Entry.Id != AnswerId(last))
            ? last
            : null;
    }

    private static Guid AnswerId(NoteEntry conclusion) =>
        DeterministicIds.Of(conclusion.Id, "did it help");

    private static Guid IdOf(Guid heapId, DateTimeOffset at, string text) =>
        DeterministicIds.Of(
            heapId,
            string.Create(CultureInfo.InvariantCulture, $"signs {at.ToUnixTimeSeconds()} {text}")
        );
}
