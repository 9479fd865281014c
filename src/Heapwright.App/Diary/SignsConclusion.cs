using System.Globalization;
using Heapwright.App.Library;
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

    private const int Half = 8; // bytes of an id
    private const string AnswerSeed = "did it help";

    /// <summary>The answers to "did it help?".</summary>
    public static IReadOnlyList<string> Answers { get; } = ["yes", "no", "cannot_tell"];

    /// <summary>The note of a conclusion.</summary>
    /// <param name="head">A note with the heap, the moment and the way; its id and words do not matter.</param>
    /// <param name="text">What was concluded.</param>
    /// <param name="cause">The cause against which it says what to do; null for none.</param>
    public static NoteEntry Note(NoteEntry head, string text, string? cause = null)
    {
        ArgumentNullException.ThrowIfNull(head);
        return head with { Id = WithCause(IdOf(head.HeapId, head.At, text), cause), Text = text };
    }

    /// <summary>The note that answers "did it help?".</summary>
    /// <param name="head">A note with the heap, the moment and the way; its id and words do not matter.</param>
    /// <param name="conclusion">The conclusion it is about.</param>
    /// <param name="word">The answer: one of <see cref="Answers"/>.</param>
    /// <param name="text">The answer in words.</param>
    public static NoteEntry Answer(NoteEntry head, NoteEntry conclusion, string word, string text)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(conclusion);
        return head with { Id = AnswerId(conclusion, word), Text = text };
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
            .LastOrDefault(IsConclusion);
        return last is not null && !record.Entries.Any(e => IsAnswer(e.Entry.Id, last))
            ? last
            : null;
    }

    /// <summary>
    /// What was done against causes before and what came of it, of each cause the last that could be told. What was
    /// concluded before causes were kept, or struck out, does not count.
    /// </summary>
    /// <param name="record">The heap with its diary.</param>
    /// <param name="now">The present.</param>
    public static IReadOnlyList<TriedRemedy> Tried(HeapRecord record, Instant now)
    {
        ArgumentNullException.ThrowIfNull(record);
        var notes = record.Diary.Standing.Select(s => s.First).OfType<NoteEntry>().ToList();
        var tried = new Dictionary<string, TriedRemedy>(StringComparer.Ordinal);
        foreach (var note in notes)
        {
            if (CauseOf(note) is not { } cause)
            {
                continue;
            }

            foreach (var word in Answers.Where(w => w != "cannot_tell"))
            {
                if (notes.Find(n => n.Id == AnswerId(note, word)) is { } answer)
                {
                    var ago = now - Instant.FromDateTimeOffset(answer.At);
                    tried[cause] = new TriedRemedy(cause, word, ago.TotalDays);
                }
            }
        }

        return [.. tried.Values];
    }

    // The first half of the id says that it is one, the other half against which cause.
    private static bool IsConclusion(NoteEntry note) =>
        note
            .Id.ToByteArray()
            .AsSpan(0, Half)
            .SequenceEqual(IdOf(note.HeapId, note.At, note.Text).ToByteArray().AsSpan(0, Half));

    private static string? CauseOf(NoteEntry note) =>
        IsConclusion(note)
            ? SignModelReader
                .Model.Causes.FirstOrDefault(c =>
                    note.Id == WithCause(IdOf(note.HeapId, note.At, note.Text), c.Id)
                )
                ?.Id
            : null;

    private static Guid WithCause(Guid id, string? cause)
    {
        if (cause is null)
        {
            return id;
        }

        var bytes = id.ToByteArray();
        DeterministicIds.Of(id, cause).ToByteArray().AsSpan(Half).CopyTo(bytes.AsSpan(Half));
        return new Guid(bytes);
    }

    // Answers were once kept without saying which.
    private static bool IsAnswer(Guid id, NoteEntry conclusion) =>
        id == DeterministicIds.Of(conclusion.Id, AnswerSeed)
        || Answers.Any(w => id == AnswerId(conclusion, w));

    private static Guid AnswerId(NoteEntry conclusion, string word) =>
        DeterministicIds.Of(conclusion.Id, AnswerSeed + " " + word);

    private static Guid IdOf(Guid heapId, DateTimeOffset at, string text) =>
        DeterministicIds.Of(
            heapId,
            string.Create(CultureInfo.InvariantCulture, $"signs {at.ToUnixTimeSeconds()} {text}")
        );
}
