using System.Globalization;
using Heapwright.Core.Hygiene;

namespace Heapwright.App.HeatRecords;

/// <summary>When an entry of a heat record was made, as it was written and as hours and calendar day.</summary>
/// <param name="Form">The form it was written in.</param>
/// <param name="Text">The time in its settled form, which goes into the hash of the record.</param>
/// <param name="Moment">Hours and calendar day.</param>
public sealed record EntryTime(EntryTimeForm Form, string Text, LogMoment Moment)
{
    /// <summary>The highest number of days since building.</summary>
    public const double MostDays = HeatLog.MostDays;

    private static readonly DateTime Origin = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Unspecified);

    private static readonly string[] Minutes =
    [
        "yyyy-MM-dd'T'HH:mm",
        "yyyy-MM-dd'T'HH:mm:ss",
        "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF",
        "yyyy-MM-dd' 'HH:mm",
        "yyyy-MM-dd' 'HH:mm:ss",
    ];

    /// <summary>Days since building.</summary>
    /// <param name="day">From 0 to <see cref="MostDays"/>, decimals allowed.</param>
    public static EntryTime OfDay(double day) =>
        new(
            EntryTimeForm.Day,
            day.ToString(CultureInfo.InvariantCulture),
            new LogMoment(24 * day, (int)Math.Floor(day))
        );

    /// <summary>A time in ISO 8601: with an offset, without one, or a date alone; null where it is none.</summary>
    /// <param name="text">The text.</param>
    public static EntryTime? OfText(string text)
    {
        if (Contract.StartTime.Of(text) is { } zoned)
        {
            return new EntryTime(
                EntryTimeForm.WithOffset,
                zoned.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz", CultureInfo.InvariantCulture),
                At(zoned.UtcDateTime, zoned.Date)
            );
        }

        return Parse(text, "yyyy-MM-dd") is { } date
                ? new EntryTime(EntryTimeForm.WithoutOffset, text, At(date, date))
            : Parse(text, Minutes) is { } local
                ? new EntryTime(
                    EntryTimeForm.WithoutOffset,
                    local.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFF", CultureInfo.InvariantCulture),
                    At(local, local)
                )
            : null;
    }

    private static DateTime? Parse(string text, params string[] forms) =>
        DateTime.TryParseExact(
            text,
            forms,
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out var time
        )
            ? time
            : null;

    private static LogMoment At(DateTime instant, DateTime here) =>
        new(
            (instant.Ticks - Origin.Ticks) / (double)TimeSpan.TicksPerHour,
            DateOnly.FromDateTime(here).DayNumber
        );
}
