using Heapwright.App.Batches;
using Heapwright.App.BuildSheets;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using NodaTime;
using Words = Heapwright.App.Texts.Words;

namespace Heapwright.Cli.Commands;

/// <summary>The commands about heaps.</summary>
/// <param name="open">Opens what is stored in a folder.</param>
internal sealed class HeapCommands(Func<string, DiaryDesk> open)
{
    private readonly Stored stored = new(open);

    /// <summary>Lists the heaps.</summary>
    /// <param name="call">The call.</param>
    public Reply List(Call call) =>
        DiaryAnswers.List(
            Stored.Await(stored.Open(call).Reader.Heaps(CancellationToken.None)),
            Instant.FromDateTimeOffset(call.Now)
        );

    /// <summary>Starts a heap.</summary>
    /// <param name="call">The call.</param>
    public Reply Start(Call call)
    {
        var desk = stored.Open(call);
        var site = Stored.Await(desk.Items.Find<Site>(Site.OnlyId, CancellationToken.None));
        var zoneId = call.Value("--zone") ?? site?.Zone ?? "Etc/UTC";
        var zone =
            DateTimeZoneProviders.Tzdb.GetZoneOrNull(zoneId)
            ?? throw Stored.Wrong("diary.zone", "--zone", zoneId);
        var builtAt = Instant.FromDateTimeOffset(Stored.Time(call, "--built", zone) ?? call.Now);
        var id = Stored.Id(call);
        var heap = call.Value("--sheet") is { } sheet
            ? FromSheet(desk, sheet, id, builtAt, zoneId)
            : FromQuestion(call, id, builtAt, zoneId);
        heap = heap with
        {
            Name = call.Value("--name") ?? heap.Name,
            Aim = Stored.Word(call, "--aim", KeptHeap.Aims, heap.Aim),
        };
        var outcome = Stored.Await(desk.Start.Start(heap, EntryWay.Cli, CancellationToken.None));
        return outcome.IsDone
            ? DiaryAnswers.Started(heap, Instant.FromDateTimeOffset(call.Now))
            : throw new InputProblem("heapwright", "", Words.Of(outcome.Refusals[0].Why));
    }

    /// <summary>Shows a heap with its diary.</summary>
    /// <param name="call">The call.</param>
    public Reply Show(Call call)
    {
        var desk = stored.Open(call);
        var heap = Stored.Heap(desk, string.Join(' ', call.Words));
        var record = Stored.Await(desk.Reader.Of(heap.Id, null, CancellationToken.None))!;
        return DiaryAnswers.Show(record, Instant.FromDateTimeOffset(call.Now), call.Measures);
    }

    /// <summary>The diary of a heap as a table.</summary>
    /// <param name="call">The call.</param>
    public Reply Table(Call call)
    {
        var desk = stored.Open(call);
        var heap = Stored.Heap(desk, string.Join(' ', call.Words));
        var record = Stored.Await(desk.Reader.Of(heap.Id, null, CancellationToken.None))!;
        return DiaryAnswers.Table(record, call.Measures);
    }

    /// <summary>The record of a batch.</summary>
    /// <param name="call">The call.</param>
    public Reply Record(Call call)
    {
        var desk = stored.Open(call);
        var heap = Stored.Heap(desk, string.Join(' ', call.Words));
        var record = Stored.Await(desk.Reader.Of(heap.Id, null, CancellationToken.None))!;
        var batch = BatchRecord.Of(
            record,
            Stored.Await(desk.Reader.Verify(heap.Id, CancellationToken.None)),
            Instant.FromDateTimeOffset(call.Now),
            call.Measures,
            LessonCommands.ForRecord(record, call)
        );
        return new Reply(batch.Answer()) { Pdf = () => batch.Pdf(PaperWords.Of(call.Paper)) };
    }

    /// <summary>Which material went to which bed.</summary>
    /// <param name="call">The call.</param>
    public Reply Where(Call call) =>
        BatchTrace.Answer(
            Stored.Await(
                BatchTrace.Of(
                    stored.Open(call).Reader,
                    string.Join(' ', call.Words),
                    CancellationToken.None
                )
            ),
            call.Measures
        );

    /// <summary>Checks a diary.</summary>
    /// <param name="call">The call.</param>
    public Reply Check(Call call)
    {
        var desk = stored.Open(call);
        var heap = Stored.Heap(desk, string.Join(' ', call.Words));
        return DiaryAnswers.Checked(
            Stored.Await(desk.Reader.Verify(heap.Id, CancellationToken.None))
        );
    }

    private static KeptHeap FromQuestion(Call call, Guid id, Instant builtAt, string zone)
    {
        if (!call.HasQuestion)
        {
            throw Stored.Wrong("diary.start_needs");
        }

        var question = call.QuestionText();
        return new KeptHeap
        {
            Id = id,
            Name = Words.Of(
                "diary.usual_name",
                null,
                DiaryAnswers.Day(builtAt, DateTimeZoneProviders.Tzdb[zone])
            ),
            BuiltAt = builtAt,
            Zone = zone,
            Question = question,
        };
    }

    private static KeptHeap FromSheet(
        DiaryDesk desk,
        string word,
        Guid id,
        Instant builtAt,
        string zone
    )
    {
        var sheet =
            Guid.TryParse(word, System.Globalization.CultureInfo.InvariantCulture, out var sheetId)
            && Stored.Await(desk.Items.Find<SavedSheet>(sheetId, CancellationToken.None))
                is { } found
                ? found
                : throw Stored.Wrong("diary.no_sheet", word);
        var bay = sheet.BayId is { } bayId
            ? Stored.Await(desk.Items.Find<Bay>(bayId, CancellationToken.None))
            : null;
        return StartHeap.FromSheet(sheet, bay, id, builtAt, zone);
    }
}
