using System.Globalization;
using Heapwright.App.Changes;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Heapwright.Web.Hosting;
using Heapwright.Web.Pages.Heaps;
using Heapwright.Web.Photos;
using Heapwright.Web.Showing;
using Microsoft.AspNetCore.Mvc;
using NodaTime;

namespace Heapwright.Web.Api;

/// <summary>
/// Takes what waited on a phone. The header that only a page of this site can send stands for the token of a form; an
/// entry that comes again is answered as kept.
/// </summary>
internal static class OutboxEndpoints
{
    /// <summary>The header that a page of another site cannot send without being asked first.</summary>
    public const string Header = "X-Outbox";

    public static void MapOutbox(this WebApplication app) =>
        app.MapPost("/outbox/{key}", (HttpContext context, string key) => Take(context, key))
            .DisableAntiforgery()
            .ExcludeFromDescription()
            .WithMetadata(new RequestSizeLimitAttribute(PhotoIntake.LargestBytes + 65_536));

    private static async Task<IResult> Take(HttpContext context, string key)
    {
        if (context.Request.Headers[Header] != "1")
        {
            return Fault(StatusCodes.Status403Forbidden, Say.Of("guard.other_site"));
        }

        var stop = context.RequestAborted;
        var desk = context.RequestServices.GetRequiredService<DiaryDesk>();
        var here = context.RequestServices.GetRequiredService<Here>();
        if (!context.Request.HasFormContentType)
        {
            return Fault(StatusCodes.Status415UnsupportedMediaType, Say.Of("guard.no_form"));
        }

        IFormCollection form;
        try
        {
            form = await context.Request.ReadFormAsync(stop);
        }
        catch (Exception problem) when (problem is BadHttpRequestException or InvalidDataException)
        {
            return Fault(
                problem is BadHttpRequestException bad
                    ? bad.StatusCode
                    : StatusCodes.Status400BadRequest,
                Say.Of("guard.too_large", PhotoIntake.LargestBytes)
            );
        }

        if (
            !Guid.TryParse(key, CultureInfo.InvariantCulture, out var heapId)
            || await desk.Items.Find<KeptHeap>(heapId, stop) is not { } heap
        )
        {
            return Fault(StatusCodes.Status404NotFound, Say.Of("guard.no_heap"));
        }

        if (
            !Guid.TryParse(form["id"], CultureInfo.InvariantCulture, out var id)
            || id == Guid.Empty
            || Moment(form, "made") is not { } made
            || Moment(form, "sent") is not { } sent
        )
        {
            return Fault(StatusCodes.Status400BadRequest, Say.Of("guard.no_form"));
        }

        await here.Read(stop);
        return await Keep(desk, here.Show, context, heap, id, (made, sent, Moment(form, "seen")));
    }

    private static async Task<IResult> Keep(
        DiaryDesk desk,
        Shown show,
        HttpContext context,
        KeptHeap heap,
        Guid id,
        (DateTimeOffset Made, DateTimeOffset Sent, DateTimeOffset? Seen) phone
    )
    {
        var form = context.Request.Form;
        var typed = Posted.From(context);
        var received = desk.Entries.Clock.GetUtcNow();
        var (settled, ahead) = PhoneClock.Settle(phone.Made, phone.Sent, phone.Seen, received);
        var own = typed["at"] is { Length: > 0 } text
            ? HeapForm.MomentOf(text, heap.TimeZone())
            : null;
        if (own is null && typed["at"] is { Length: > 0 } unclear)
        {
            typed.Refuse(Refusal.Of("at", "sites.date_unclear", unclear, "2026-05-01T15:00"));
        }

        var at = own ?? settled;
        var photo = await ReadingKeep.PhotoOf(form, typed, context.RequestAborted);
        var entries = new ReadingAsk(typed, name => form[name], show).Entries(
            id,
            heap,
            Instant.FromDateTimeOffset(at ?? received).InZone(heap.TimeZone()).ToDateTimeOffset(),
            received,
            photo
        );
        if (entries.Count == 0)
        {
            return Fault(
                StatusCodes.Status422UnprocessableEntity,
                string.Join(' ', typed.Faults.Values)
            );
        }

        // What is there already was settled when it came first.
        if (at is null && !await desk.Repeats.StandAlready(entries, context.RequestAborted))
        {
            return Fault(
                StatusCodes.Status422UnprocessableEntity,
                Say.Of(Refusal.Of("at", "readings.clock_unclear"))
            );
        }

        var note = own is null && ahead != TimeSpan.Zero ? Told(entries[0], id, ahead) : null;
        var outcome = await ReadingKeep.Keep(
            desk,
            heap,
            entries,
            (note, photo, PairedDevice.NameOf(context)),
            context.RequestAborted
        );
        return outcome.Status == AppendStatus.Refused
            ? Fault(StatusCodes.Status422UnprocessableEntity, Say.Of(new Refusal("", outcome.Why!)))
            : Results.Json(
                new
                {
                    id = id.ToString("D"),
                    status = outcome.Status == AppendStatus.Kept ? "kept" : "already",
                    at = received.ToUnixTimeMilliseconds(),
                }
            );
    }

    // That a time was moved stands in the diary beside it.
    private static NoteEntry Told(DiaryEntry first, Guid id, TimeSpan ahead) =>
        new()
        {
            Id = DeterministicIds.Of(id, "clock"),
            HeapId = first.HeapId,
            At = first.At,
            Zone = first.Zone,
            ReceivedAt = first.ReceivedAt,
            Way = first.Way,
            Text = Say.Of(
                Refusal.Of(
                    "at",
                    ahead < TimeSpan.Zero ? "readings.clock_behind" : "readings.clock_ahead",
                    Math.Round(ahead.Duration().TotalMinutes)
                )
            ),
        };

    private static DateTimeOffset? Moment(IFormCollection form, string field) =>
        long.TryParse(form[field], NumberStyles.None, CultureInfo.InvariantCulture, out var ms)
        && ms is > 0 and < 253_370_764_800_000
            ? DateTimeOffset.FromUnixTimeMilliseconds(ms)
            : null;

    private static IResult Fault(int status, string error) =>
        Results.Json(new { error }, statusCode: status);
}
