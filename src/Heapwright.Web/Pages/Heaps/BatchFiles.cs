using System.Text;
using Heapwright.App.Batches;
using Heapwright.App.BuildSheets;
using Heapwright.App.Diary;
using Heapwright.App.Lessons;
using Heapwright.Web.Showing;
using NodaTime;

namespace Heapwright.Web.Pages.Heaps;

/// <summary>The record of a batch as files.</summary>
internal static class BatchFiles
{
    /// <summary>The record of a heap, or null where there is none.</summary>
    public static async Task<BatchRecord?> Find(
        DiaryDesk desk,
        string key,
        Shown show,
        TimeProvider clock,
        CancellationToken stop,
        TaughtHeaps? taught = null
    ) =>
        Guid.TryParseExact(key, "N", out var id)
        && await desk.Reader.Of(id, null, stop) is { } record
            ? BatchRecord.Of(
                record,
                await desk.Reader.Verify(id, stop),
                Instant.FromDateTimeOffset(clock.GetUtcNow()),
                show.Measures,
                taught is not null && TaughtQuestion.ForRecord(record) is { } question
                    ? await taught.Ask(question, show.Measures, Posted.Empty(), stop)
                    : null
            )
            : null;

    /// <summary>The record as JSON.</summary>
    public static async Task<IResult> Json(
        string key,
        DiaryDesk desk,
        Here here,
        TimeProvider clock,
        TaughtHeaps taught,
        CancellationToken cancel
    )
    {
        await here.Read(cancel);
        return await Find(desk, key, here.Show, clock, cancel, taught) is { } batch
            ? Results.File(
                Encoding.UTF8.GetBytes(batch.Answer().Json.ToJsonString()),
                "application/json",
                "batch.json"
            )
            : Results.NotFound();
    }

    /// <summary>The record as PDF.</summary>
    public static async Task<IResult> Pdf(
        string key,
        string? paper,
        DiaryDesk desk,
        Here here,
        TimeProvider clock,
        TaughtHeaps taught,
        CancellationToken cancel
    )
    {
        await here.Read(cancel);
        return await Find(desk, key, here.Show, clock, cancel, taught) is { } batch
            ? Results.File(batch.Pdf(PaperWords.Of(paper)), "application/pdf", "batch.pdf")
            : Results.NotFound();
    }

    /// <summary>The record of heat to sign.</summary>
    public static async Task<IResult> HeatPdf(
        string key,
        string? paper,
        DiaryDesk desk,
        Here here,
        TimeProvider clock,
        CancellationToken cancel
    )
    {
        await here.Read(cancel);
        return await Find(desk, key, here.Show, clock, cancel) is { Heat: { } heat }
            ? Results.File(
                heat.Pdf(PaperWords.Of(paper), clock.GetUtcNow(), here.Show.Measures),
                "application/pdf",
                "record-of-heat.pdf"
            )
            : Results.NotFound();
    }
}
