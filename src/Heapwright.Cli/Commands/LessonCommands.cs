using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Lessons;
using Heapwright.App.Sites;
using NodaTime;
using Words = Heapwright.App.Texts.Words;

namespace Heapwright.Cli.Commands;

/// <summary>The commands that look back on heaps.</summary>
/// <param name="open">Opens what is stored in a folder.</param>
internal sealed class LessonCommands(Func<string, DiaryDesk> open)
{
    private readonly Stored stored = new(open);

    /// <summary>What a heap taught; keeps it for the next one, or forgets it.</summary>
    /// <param name="call">The call.</param>
    public Reply Taught(Call call)
    {
        if (call.Keep && call.Forget)
        {
            throw Stored.Wrong("lessons.keep_choice");
        }

        var desk = stored.Open(call);
        var heap = Stored.Heap(desk, string.Join(' ', call.Words));
        var kept = Stored.Await(
            desk.Items.Find<KeptLesson>(TaughtHeap.IdOf(heap.Id), CancellationToken.None)
        );
        if (call.Forget)
        {
            Stored.Await(
                desk.Lessons.Remove(
                    kept ?? throw Stored.Wrong("lessons.not_kept", heap.Name),
                    CancellationToken.None
                )
            );
            return new Answer(
                new JsonObject { ["schema"] = 1, ["kept"] = null },
                Yes: true,
                Words.Of("lessons.forgotten", null, heap.Name)
            );
        }

        var taught = Of(desk, heap, call);
        if (call.Keep)
        {
            if (!taught.Lesson.CanBeKept)
            {
                throw Stored.Wrong("lessons.cannot_keep", heap.Name);
            }

            kept = taught.ToKeep(heap, Instant.FromDateTimeOffset(call.Now));
            Stored.Await(desk.Lessons.Keep(kept, CancellationToken.None));
        }

        return taught.Answer(heap, kept);
    }

    /// <summary>What a heap taught, for the record of the batch; null where nothing was read that tells anything.</summary>
    /// <param name="record">The heap with its diary.</param>
    /// <param name="call">The call.</param>
    public static TaughtHeap? ForRecord(HeapRecord record, Call call)
    {
        if (TaughtQuestion.ForRecord(record) is not { } question)
        {
            return null;
        }

        try
        {
            return TaughtAnswers.Make(
                Input.Of(question, record.Kept.Name),
                SimulateLimits.CommandLine(null),
                call.Measures
            );
        }
        catch (InputProblem)
        {
            // A record is shown whatever the models make of it.
            return null;
        }
    }

    /// <summary>What a heap taught.</summary>
    /// <param name="desk">What is stored.</param>
    /// <param name="heap">The heap.</param>
    /// <param name="call">The call.</param>
    private static TaughtHeap Of(DiaryDesk desk, KeptHeap heap, Call call) =>
        TaughtAnswers.Make(
            Input.Of(TaughtQuestion.Of(Record(desk, heap)), heap.Name),
            SimulateLimits.CommandLine(null),
            call.Measures
        );

    /// <summary>Holds a heap against another one, or against itself.</summary>
    /// <param name="call">The call.</param>
    public Reply Compare(Call call)
    {
        var desk = stored.Open(call);
        var first = Stored.Heap(desk, string.Join(' ', call.Words));
        var without = call.Value("--without");
        var by = call.Value("--by") is null
            ? null
            : Stored.Word(call, "--by", ComparisonReader.Deciding, "");
        JsonObject question;
        KeptHeap? second = null;
        if (call.Value("--against") is { } against)
        {
            if (without is not null)
            {
                throw Stored.Wrong("lessons.compare_both");
            }

            second = Stored.Heap(desk, against);
            if (second.Id == first.Id)
            {
                throw Stored.Wrong("lessons.compare_same", first.Name);
            }

            question = TaughtQuestion.Against(Record(desk, first), Record(desk, second), by);
        }
        else
        {
            question = TaughtQuestion.Without(
                Record(desk, first),
                without is null
                    ? throw Stored.Wrong(
                        "lessons.compare_needs",
                        string.Join(", ", ComparisonReader.Without)
                    )
                    : Stored.Word(call, "--without", ComparisonReader.Without, ""),
                by
            );
        }

        return ComparisonAnswers
            .Make(Input.Of(question, first.Name), SimulateLimits.CommandLine(null), call.Measures)
            .Answer(first.Name, second?.Name);
    }

    private static HeapRecord Record(DiaryDesk desk, KeptHeap heap) =>
        Stored.Await(desk.Reader.Of(heap.Id, null, CancellationToken.None))!;
}
