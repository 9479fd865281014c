using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace Heapwright.App.Diary.Tables;

/// <summary>Reads single cells of a table.</summary>
internal static class TableCells
{
    private static readonly LocalTimePattern[] Clocks =
    [
        .. new[] { "H:mm", "H:mm:ss", "H:mm:ss.FFFFFFF", "h:mm tt", "h:mm:ss tt" }.Select(
            LocalTimePattern.CreateWithInvariantCulture
        ),
    ];

    // A day without a time counts as midday: it is at most half a day wrong.
    private static readonly LocalTime Midday = new(12, 0);

    /// <summary>A number, with the sign of a unit behind it or not.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="comma">Whether decimals stand behind a comma.</param>
    public static double? Number(ReadOnlySpan<char> cell, bool comma)
    {
        cell = cell.Trim().TrimEnd("°CFcf³ ").TrimEnd();
        foreach (var unit in new[] { "mm", "cm", "in", "l", "L" })
        {
            if (cell.EndsWith(unit, StringComparison.Ordinal))
            {
                cell = cell[..^unit.Length].TrimEnd();
                break;
            }
        }

        if (cell.IsEmpty || cell.Length > 40 || (comma ? cell.Contains('.') : cell.Contains(',')))
        {
            return null;
        }

        Span<char> plain = stackalloc char[cell.Length];
        cell.CopyTo(plain);
        if (comma)
        {
            plain.Replace(',', '.');
        }

        return
            double.TryParse(
                plain,
                NumberStyles.AllowLeadingSign
                    | NumberStyles.AllowDecimalPoint
                    | NumberStyles.AllowExponent,
                CultureInfo.InvariantCulture,
                out var value
            ) && double.IsFinite(value)
            ? value
            : null;
    }

    /// <summary>A moment that stands for itself: with an offset, or in seconds or milliseconds since 1970.</summary>
    /// <param name="cell">The cell.</param>
    public static DateTimeOffset? Moment(ReadOnlySpan<char> cell)
    {
        cell = cell.Trim();
        if (cell.Length is 10 or 13 && !cell.ContainsAnyExceptInRange('0', '9'))
        {
            var number = long.Parse(cell, NumberStyles.None, CultureInfo.InvariantCulture);
            return cell.Length == 10
                ? DateTimeOffset.FromUnixTimeSeconds(number)
                : DateTimeOffset.FromUnixTimeMilliseconds(number);
        }

        return cell.Length is >= 17 and <= 40 && char.IsAsciiDigit(cell[0])
            ? Contract.StartTime.Of(Iso(cell))
            : null;
    }

    /// <summary>The date and time on the clock, without an offset; midday where the time is missing.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="order">The order of dates with slashes.</param>
    public static LocalDateTime? Local(ReadOnlySpan<char> cell, DateOrder order)
    {
        cell = cell.Trim();
        var end = cell.IndexOfAny(' ', 'T');
        var date = Date(end < 0 ? cell : cell[..end], order);
        if (date is not { } day || end < 0)
        {
            return date?.At(Midday);
        }

        return Clock(cell[(end + 1)..]) is { } time ? day.At(time) : null;
    }

    /// <summary>A date.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="order">The order where it has slashes.</param>
    public static LocalDate? Date(ReadOnlySpan<char> cell, DateOrder order)
    {
        if (Parts(cell) is not var (first, second, third, mark))
        {
            return null;
        }

        var (year, month, day) =
            first > 31 ? (first, second, third)
            : mark == '/' && order == DateOrder.MonthFirst ? (third, first, second)
            : (third, second, first);
        year = year < 100 ? 2000 + year : year;
        return
            month is >= 1 and <= 12
            && year is >= 1900 and <= 9998
            && day >= 1
            && day <= CalendarSystem.Iso.GetDaysInMonth(year, month)
            ? new LocalDate(year, month, day)
            : null;
    }

    /// <summary>The three numbers of a date and what stands between them.</summary>
    /// <param name="cell">The cell.</param>
    public static (int First, int Second, int Third, char Mark)? Parts(ReadOnlySpan<char> cell)
    {
        cell = cell.Trim();
        var one = cell.IndexOfAny("-/.");
        if (one < 1)
        {
            return null;
        }

        var mark = cell[one];
        var two = cell[(one + 1)..].IndexOf(mark);
        return
            two > 0
            && Whole(cell[..one]) is { } first
            && Whole(cell.Slice(one + 1, two)) is { } second
            && Whole(cell[(one + two + 2)..]) is { } third
            ? (first, second, third, mark)
            : null;
    }

    /// <summary>A time of day.</summary>
    /// <param name="cell">The cell.</param>
    public static LocalTime? Clock(ReadOnlySpan<char> cell)
    {
        cell = cell.Trim();
        // The usual form, without the detour over text.
        if (
            cell.Length is 5 or 8
            && cell[2] == ':'
            && Whole(cell[..2]) is { } hour and < 24
            && Whole(cell[3..5]) is { } minute and < 60
        )
        {
            return cell.Length == 5 ? new LocalTime(hour, minute)
                : cell[5] == ':' && Whole(cell[6..]) is { } second and < 60
                    ? new LocalTime(hour, minute, second)
                : null;
        }

        var text = cell.ToString();
        foreach (var pattern in Clocks)
        {
            if (pattern.Parse(text) is { Success: true } read)
            {
                return read.Value;
            }
        }

        return null;
    }

    private static int? Whole(ReadOnlySpan<char> digits) =>
        digits.Length is >= 1 and <= 4
        && int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var value)
            ? value
            : null;

    // An offset may be written without its colon, and without minutes.
    private static string Iso(ReadOnlySpan<char> cell)
    {
        var text = cell.ToString();
        var sign = text.LastIndexOfAny(['+', '-']);
        if (sign < 16)
        {
            return text;
        }

        var offset = text[(sign + 1)..].TrimEnd();
        return offset.Length switch
        {
            2 => text[..(sign + 1)].Replace(" +", "+", StringComparison.Ordinal) + offset + ":00",
            4 => text[..(sign + 1)] + offset[..2] + ":" + offset[2..],
            _ => text,
        };
    }
}
