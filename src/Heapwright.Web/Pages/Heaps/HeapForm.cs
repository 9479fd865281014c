using System.Globalization;
using Heapwright.App.Changes;
using Heapwright.App.Diary;
using Heapwright.Core.Readings;
using Heapwright.Web.Components;
using Heapwright.Web.Hosting;
using Heapwright.Web.Showing;
using Microsoft.AspNetCore.Components;
using NodaTime;
using NodaTime.Text;

namespace Heapwright.Web.Pages.Heaps;

/// <summary>What every form of a heap has: the heap, the moment that is typed, and the way into its diary.</summary>
public abstract class HeapForm : SitePage
{
    private static readonly LocalDateTimePattern Typing =
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    private static readonly LocalDateTimePattern TypingSeconds =
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss");

    /// <summary>The heap with its diary.</summary>
    [Parameter, EditorRequired]
    public HeapRecord Record { get; set; } = default!;

    /// <summary>The heaps and their diaries.</summary>
    [Inject]
    protected DiaryDesk Desk { get; set; } = default!;

    /// <summary>The page of the heap.</summary>
    protected string Url => UrlOf(Record.Kept.Id);

    /// <summary>An id for what is typed into a form: sent twice, it counts once.</summary>
    protected static string NewId =>
        Guid.CreateVersion7().ToString("N", CultureInfo.InvariantCulture);

    /// <summary>The moment now, as a field for a moment has it.</summary>
    protected string Now => Typed["at"] ?? NowIn(Record.Kept.TimeZone());

    /// <summary>The page of a heap.</summary>
    /// <param name="heapId">The heap.</param>
    public static string UrlOf(Guid heapId) =>
        "/heaps/" + heapId.ToString("N", CultureInfo.InvariantCulture);

    /// <summary>The moment now in a zone, as a field for a moment has it.</summary>
    /// <param name="zone">The zone.</param>
    protected string NowIn(DateTimeZone zone) =>
        Typing.Format(
            Instant.FromDateTimeOffset(Desk.Entries.Clock.GetUtcNow()).InZone(zone).LocalDateTime
        );

    /// <summary>The moment that was typed, by the clock of a zone; refused where it cannot be read.</summary>
    /// <param name="field">The field.</param>
    /// <param name="zone">The zone.</param>
    protected DateTimeOffset Moment(string field, DateTimeZone zone)
    {
        var text = Typed[field] is { Length: > 0 } typed ? typed : NowIn(zone);
        if (MomentOf(text, zone) is { } moment)
        {
            return moment;
        }

        Typed.Refuse(Refusal.Of(field, "sites.date_unclear", text, NowIn(zone)));
        return default;
    }

    /// <summary>A moment by the clock of a zone, as a field for a moment has it; null where it cannot be read.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="zone">The zone.</param>
    internal static DateTimeOffset? MomentOf(string text, DateTimeZone zone)
    {
        var read = Typing.Parse(text);
        read = read.Success ? read : TypingSeconds.Parse(text);
        return read.Success ? read.Value.InZoneLeniently(zone).ToDateTimeOffset() : null;
    }

    /// <summary>The head of an entry that was typed, as a note with nothing in it yet; null where something was refused.</summary>
    protected NoteEntry? Head()
    {
        Take();
        var at = Moment("at", Record.Kept.TimeZone());
        if (!Guid.TryParseExact(Typed["id"], "N", out var id) || id == Guid.Empty)
        {
            Typed.Refuse(Refusal.Of("", "sites.gone"));
        }

        return Typed.IsRefused
            ? null
            : new NoteEntry
            {
                Id = id,
                HeapId = Record.Kept.Id,
                At = at,
                Zone = Record.Kept.Zone,
                ReceivedAt = Desk.Entries.Clock.GetUtcNow(),
                Way = EntryWay.Page,
                Text = "-",
            };
    }

    /// <summary>Keeps an entry and goes on to the page of the heap, or shows why it was refused.</summary>
    /// <param name="entry">The entry; null where something was refused already.</param>
    /// <param name="next">The page to go on to; the page of the heap if null.</param>
    protected async Task Keep(DiaryEntry? entry, string? next = null)
    {
        if (entry is not null && !Typed.IsRefused)
        {
            var by = PairedDevice.NameOf(Context);
            GoOn((await Desk.Entries.Record(Record.Kept.Id, [entry], Stop, by))[0], next);
        }
    }

    /// <summary>Goes on to the page of the heap, or shows why an entry was refused.</summary>
    /// <param name="outcome">What became of it.</param>
    /// <param name="next">The page to go on to; the page of the heap if null.</param>
    protected void GoOn(EntryOutcome outcome, string? next = null)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        if (outcome.Status == AppendStatus.Refused)
        {
            Typed.Refuse(new Refusal("", outcome.Why!));
            return;
        }

        Navigation.NavigateTo(
            next is null
                ? LocalUrl.With(Url, "kept", "1") + "#ledger"
                : LocalUrl.With(next, "kept", "1")
        );
    }
}
