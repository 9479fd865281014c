using System.Globalization;

namespace Heapwright.App.Contract;

/// <summary>Today and the day of building of a question of <c>finish</c>: dates, or times with an offset.</summary>
/// <param name="Today">Now; null where it was not said.</param>
/// <param name="IsDate">Whether only a date was given, so that dates go out.</param>
internal sealed record FinishDates(DateTimeOffset? Today, bool IsDate)
{
    private const string Form = "yyyy-MM-dd";

    /// <summary>A date or a time.</summary>
    /// <param name="input">The text.</param>
    /// <exception cref="InputProblem">It is neither.</exception>
    public static (DateTimeOffset Time, bool IsDate) Read(Input input)
    {
        var text = input.Text(40);
        if (
            DateOnly.TryParseExact(
                text,
                Form,
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var date
            )
        )
        {
            var time = new DateTimeOffset(date, TimeOnly.MinValue, TimeSpan.Zero);
            return (Within(time, input), true);
        }

        return StartTime.Of(text) is { } moment
            ? (Within(moment, input), false)
            : throw input.Problem(
                $"\"{text}\" is no date; write it such as 2026-05-02, or as a time with an offset such as 2026-05-02T09:30:00+02:00"
            );
    }

    /// <summary>The date, or the time, some days from now; null where now is not known.</summary>
    /// <param name="days">Days from now; a date is rounded up to the whole day.</param>
    public string? After(double days)
    {
        if (Today is not { } today)
        {
            return null;
        }

        return IsDate
            ? today.AddDays(Math.Ceiling(days)).ToString(Form, CultureInfo.InvariantCulture)
            : today
                .AddDays(days)
                .ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);
    }

    // So that days can be added to it without an end.
    private static DateTimeOffset Within(DateTimeOffset time, Input input) =>
        time.Year is >= 1900 and <= 2200
            ? time
            : throw input.Problem(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the year {time.Year} is out of range; 1900 to 2200 is allowed"
                )
            );
}
