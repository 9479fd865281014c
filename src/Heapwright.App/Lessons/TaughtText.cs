using System.Text;
using Heapwright.App.Contract;
using Heapwright.App.Sites;
using Heapwright.App.Texts;

namespace Heapwright.App.Lessons;

/// <summary>What a heap taught, in words.</summary>
public static class TaughtText
{
    /// <summary>The whole answer.</summary>
    /// <param name="taught">What it taught.</param>
    /// <param name="kept">The heap.</param>
    /// <param name="lesson">What is kept of it; null for nothing.</param>
    public static string Of(TaughtHeap taught, KeptHeap kept, KeptLesson? lesson)
    {
        ArgumentNullException.ThrowIfNull(taught);
        ArgumentNullException.ThrowIfNull(kept);
        var text = new StringBuilder();
        text.AppendLine(Words.Of("lessons.head", null, kept.Name));
        foreach (var doubt in taught.Doubts)
        {
            text.AppendLine(doubt);
        }

        Figures.AppendList(
            text,
            Words.Of("lessons.predicted"),
            [.. taught.Rows.Select(r => r.Text)]
        );
        Figures.AppendList(
            text,
            Words.Of("lessons.learned_head"),
            taught.Learned.IsEmpty ? [Words.Of("lessons.learned_nothing")] : taught.Learned
        );
        text.AppendLine().AppendLine(KeptLine(taught, lesson));
        text.AppendLine(Words.Of("lessons.honesty"));
        Figures.AppendList(text, Words.Of("quantities.assumed"), taught.Assumptions);
        MaterialCautions.Append(text, taught.Cautions);
        return text.ToString();
    }

    /// <summary>Whether it is kept for the next heap, in a sentence.</summary>
    /// <param name="taught">What it taught.</param>
    /// <param name="lesson">What is kept of it; null for nothing.</param>
    public static string KeptLine(TaughtHeap taught, KeptLesson? lesson)
    {
        ArgumentNullException.ThrowIfNull(taught);
        return lesson switch
        {
            { IsUsed: true } => Words.Of("lessons.kept", null, lesson.Readings),
            { } => Words.Of("lessons.kept_unused", null, lesson.Readings),
            _ => Words.Of(taught.Lesson.CanBeKept ? "lessons.kept_not" : "lessons.kept_cannot"),
        };
    }
}
