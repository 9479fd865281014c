using System.Globalization;

namespace Heapwright.App.Contract;

/// <summary>Reads times as the contract has them: ISO 8601 with an offset.</summary>
internal static class StartTime
{
    private static readonly string[] Forms =
    [
        "yyyy-MM-dd'T'HH:mmK",
        "yyyy-MM-dd'T'HH:mm:ssK",
        "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK",
        "yyyy-MM-dd' 'HH:mmK",
        "yyyy-MM-dd' 'HH:mm:ssK",
    ];

    /// <summary>A time, or null where the text is none or has no offset.</summary>
    /// <param name="text">The text.</param>
    public static DateTimeOffset? Of(string text)
    {
        var zoned =
            text.EndsWith('Z') || (text.Length > 16 && text[^6] is '+' or '-' && text[^3] == ':');
        return
            zoned
            && DateTimeOffset.TryParseExact(
                text,
                Forms,
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var time
            )
            ? time
            : null;
    }

    /// <summary>A time.</summary>
    /// <param name="input">The text.</param>
    /// <exception cref="InputProblem">It is no time with an offset.</exception>
    public static DateTimeOffset Read(Input input)
    {
        var text = input.Text(40);
        return Of(text)
            ?? throw input.Problem(
                $"\"{text}\" is no time with an offset; write it such as 2026-05-02T09:30:00+02:00"
            );
    }

    /// <summary>The hour of the day where the time was written down, 0 to 24.</summary>
    /// <param name="time">The time.</param>
    public static double HourOfDay(DateTimeOffset time) => time.TimeOfDay.TotalHours;
}
