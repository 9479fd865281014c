using System.Globalization;
using Heapwright.App.Coming;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;

namespace Heapwright.Web.Links;

/// <summary>The days to come as a calendar (RFC 5545): whole days, each under an id that stays the same.</summary>
internal static class CalendarText
{
    // From here on revisions are counted, in minutes: what was changed later has the higher number.
    private static readonly Instant Epoch = Instant.FromUtc(2026, 1, 1, 0, 0);

    /// <summary>The text of the calendar.</summary>
    /// <param name="days">The days.</param>
    /// <param name="name">What the calendar is called.</param>
    /// <param name="root">The address of the site, without a slash at the end.</param>
    /// <param name="culture">The language.</param>
    public static string Of(
        IEnumerable<ComingDay> days,
        string name,
        string root,
        CultureInfo culture
    )
    {
        var calendar = new Ical.Net.Calendar
        {
            ProductId = "-//Heapwright//Coming days//EN",
            Version = "2.0",
            Method = "PUBLISH",
        };
        calendar.AddProperty("X-WR-CALNAME", name);
        calendar.AddProperty("REFRESH-INTERVAL;VALUE=DURATION", "PT6H");
        calendar.AddProperty("X-PUBLISHED-TTL", "PT6H");
        foreach (var day in days.Where(d => d.IsDated))
        {
            calendar.Events.Add(Event(day, root, culture));
        }

        return new CalendarSerializer().SerializeToString(calendar) ?? "";
    }

    private static CalendarEvent Event(ComingDay day, string root, CultureInfo culture)
    {
        var changed = new CalDateTime(day.ChangedAt.ToDateTimeUtc(), "UTC");
        return new CalendarEvent
        {
            Uid = $"{day.Subject:D}-{Word(day.Kind)}@heapwright",
            Summary = day.Text(culture),
            // The end is the first day that no longer belongs to it.
            DtStart = Date(day.First),
            DtEnd = Date(day.Last.PlusDays(1)),
            DtStamp = changed,
            LastModified = changed,
            Sequence = Math.Max(0, (int)(day.ChangedAt - Epoch).TotalMinutes),
            Url = new Uri(root + day.Page),
            // It takes up no time: other appointments may stand beside it.
            Transparency = TransparencyType.Transparent,
        };
    }

    private static CalDateTime Date(LocalDate day) => new(day.Year, day.Month, day.Day);

    private static string Word(ComingKind kind) =>
        kind switch
        {
            ComingKind.TestToRead => "read",
            ComingKind.StuffSpoils => "use",
            ComingKind.DidItHelp => "helped",
            ComingKind.NextStep => "step",
            _ => "go-on",
        };
}
