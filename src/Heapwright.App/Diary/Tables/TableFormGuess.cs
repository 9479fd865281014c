using System.Collections.Immutable;
using System.Globalization;
using Heapwright.App.Contract;
using Heapwright.App.Texts;
using nietras.SeparatedValues;

namespace Heapwright.App.Diary.Tables;

/// <summary>Finds out from the beginning of a table how it is written. What cannot be told is asked, not guessed.</summary>
public static class TableFormGuess
{
    /// <summary>How many rows are looked at.</summary>
    public const int Rows = 500;

    private static readonly char[] Separators = ['\t', ';', ',', '|'];

    // The longest words first: a column "air temperature" is the air, not the heap.
    private static readonly (ColumnRole Role, string[] Words)[] Told =
    [
        (ColumnRole.Air, ["air", "ambient", "outside_temp", "outdoor", "luft"]),
        (ColumnRole.Temperature, ["temp", "celsius", "fahrenheit", "°c", "°f", "degc", "degf"]),
        (ColumnRole.Depth, ["depth", "tiefe"]),
        (ColumnRole.Spot, ["spot", "probe", "sensor", "position", "place", "stelle"]),
        (ColumnRole.Event, ["event", "action", "done", "note", "remark", "ereignis"]),
        (ColumnRole.Time, ["datetime", "timestamp", "date_time", "date/time", "zeitpunkt", "unix"]),
        (ColumnRole.Date, ["date", "datum"]),
        (ColumnRole.Clock, ["time", "clock", "uhrzeit", "zeit"]),
        (ColumnRole.Day, ["day", "tag"]),
    ];

    /// <summary>How a table is written.</summary>
    /// <param name="beginning">Its first lines; the last one whole.</param>
    /// <param name="name">Its name for messages.</param>
    /// <param name="wishes">What the person says of it.</param>
    /// <exception cref="InputProblem">It is no table of readings, or something about it must be said by the person.</exception>
    public static TableForm Of(string beginning, string name, TableWishes wishes)
    {
        ArgumentNullException.ThrowIfNull(beginning);
        ArgumentNullException.ThrowIfNull(wishes);
        var separator = Separator(beginning);
        var rows = Cells(beginning, separator);
        if (rows.Count == 0)
        {
            throw Wrong(name, "table_empty");
        }

        var hasHeader = rows[0].All(c => !IsValue(c)) && rows[0].Any(c => c.Trim().Length > 0);
        ImmutableArray<string> names = hasHeader
            ? [.. rows[0].Select(c => c.Trim())]
            :
            [
                .. Enumerable
                    .Range(1, rows[0].Length)
                    .Select(n => n.ToString(CultureInfo.InvariantCulture)),
            ];
        var values = hasHeader ? rows[1..] : rows;
        if (values.Count == 0)
        {
            throw Wrong(name, "table_empty");
        }

        var comma = separator != ',' && DecimalComma(values);
        var roles = hasHeader ? ByName(names, values) : ByContent(names.Length, values, comma);
        var temperature = Array.IndexOf(roles, ColumnRole.Temperature);
        var times = new[] { ColumnRole.Time, ColumnRole.Date, ColumnRole.Day };
        if (!roles.Any(r => r is { } role && times.Contains(role)))
        {
            throw Wrong(name, "table_no_time", string.Join(", ", names));
        }

        if (temperature < 0 && !roles.Contains(ColumnRole.Event))
        {
            throw Wrong(name, "table_no_temperature", string.Join(", ", names));
        }

        var said =
            wishes.Fahrenheit
            ?? (temperature < 0 ? null : SaidUnit(names[temperature], values, temperature));
        var depth = Array.IndexOf(roles, ColumnRole.Depth);
        return new TableForm
        {
            Separator = separator,
            HasHeader = hasHeader,
            Names = names,
            Roles = [.. roles],
            DecimalComma = comma,
            Fahrenheit = said ?? LooksFahrenheit(values, temperature, comma),
            UnitIsSaid = said is not null,
            DepthInInches =
                depth >= 0
                && (
                    Has(names[depth], "in")
                    || values.Any(r =>
                        Cell(r, depth).Trim().EndsWith("in", StringComparison.OrdinalIgnoreCase)
                    )
                ),
            Dates = wishes.Dates ?? Order(name, roles, values),
        };
    }

    private static char Separator(string text)
    {
        var lines = text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Take(50).ToArray();
        return Separators
            .Select(
                (mark, i) => (mark, i, counts: lines.Select(l => l.Count(c => c == mark)).ToArray())
            )
            .Where(s => s.counts.Length > 0 && s.counts.All(c => c > 0))
            .OrderByDescending(s => s.counts.Distinct().Count() == 1)
            .ThenBy(s => s.i)
            .Select(s => s.mark)
            .FirstOrDefault(',');
    }

    private static List<string[]> Cells(string text, char separator)
    {
        using var reader = Sep.New(separator)
            .Reader(o => o with { HasHeader = false, Unescape = true, DisableColCountCheck = true })
            .FromText(text);
        var rows = new List<string[]>();
        foreach (var row in reader)
        {
            if (rows.Count == Rows)
            {
                break;
            }

            var cells = new string[row.ColCount];
            for (var i = 0; i < cells.Length; i++)
            {
                cells[i] = row[i].ToString();
            }

            if (cells.Any(c => c.Trim().Length > 0))
            {
                rows.Add(cells);
            }
        }

        return rows;
    }

    private static ColumnRole?[] ByName(ImmutableArray<string> names, List<string[]> values)
    {
        var roles = new ColumnRole?[names.Length];
        foreach (var (role, words) in Told)
        {
            for (var i = 0; i < names.Length; i++)
            {
                if (roles[i] is null && !roles.Contains(role) && words.Any(w => Has(names[i], w)))
                {
                    roles[i] = role;
                    break;
                }
            }
        }

        // "date" or "time" alone may hold both.
        foreach (var role in new[] { ColumnRole.Date, ColumnRole.Clock })
        {
            var column = Array.IndexOf(roles, role);
            if (column >= 0 && !roles.Contains(ColumnRole.Time) && HoldsBoth(values, column))
            {
                roles[column] = ColumnRole.Time;
            }
        }

        return roles;
    }

    private static ColumnRole?[] ByContent(int count, List<string[]> values, bool comma)
    {
        var roles = new ColumnRole?[count];
        for (var i = 0; i < count; i++)
        {
            var column = i;
            var cells = values
                .Select(r => Cell(r, column))
                .Where(c => c.Trim().Length > 0)
                .ToArray();
            if (cells.Length == 0)
            {
                continue;
            }

            var role =
                cells.All(c => TableCells.Moment(c) is not null || HasTime(c)) ? ColumnRole.Time
                : cells.All(c =>
                    TableCells.Date(c, DateOrder.DayFirst) is not null
                    || TableCells.Date(c, DateOrder.MonthFirst) is not null
                )
                    ? ColumnRole.Date
                : cells.All(c => TableCells.Clock(c) is not null) ? ColumnRole.Clock
                : cells.All(c => TableCells.Number(c, comma) is not null)
                    ? roles.Any(r => r is ColumnRole.Time or ColumnRole.Date or ColumnRole.Day)
                            ? ColumnRole.Temperature
                        : ColumnRole.Day
                : cells.Any(c => TableSpots.Of(c) is not null) ? ColumnRole.Spot
                : (ColumnRole?)null;
            roles[i] = role is not null && !roles.Contains(role) ? role : null;
        }

        return roles;
    }

    private static bool HoldsBoth(List<string[]> values, int column) =>
        values.Any(r => TableCells.Moment(Cell(r, column)) is not null || HasTime(Cell(r, column)));

    private static bool HasTime(string cell) =>
        cell.Contains(':', StringComparison.Ordinal)
        && (
            TableCells.Local(cell, DateOrder.DayFirst) is not null
            || TableCells.Local(cell, DateOrder.MonthFirst) is not null
        );

    private static bool DecimalComma(List<string[]> values) =>
        values.Any(r =>
            r.Any(c =>
                TableCells.Number(c, comma: true) is not null
                && c.Contains(',', StringComparison.Ordinal)
            )
        )
        && !values.Any(r =>
            r.Any(c =>
                c.Contains('.', StringComparison.Ordinal)
                && TableCells.Number(c, comma: false) is not null
            )
        );

    private static bool? SaidUnit(string header, List<string[]> values, int column)
    {
        if (
            Has(header, "°f")
            || Has(header, "f")
            || Has(header, "fahrenheit")
            || Has(header, "degf")
        )
        {
            return true;
        }

        if (Has(header, "°c") || Has(header, "c") || Has(header, "celsius") || Has(header, "degc"))
        {
            return false;
        }

        var cells = values.Select(r => Cell(r, column).Trim()).ToArray();
        return cells.Any(c => c.EndsWith('F')) ? true
            : cells.Any(c => c.EndsWith('C')) ? false
            : null;
    }

    // A heap is at 100 °C never, at 100 °F nearly always.
    private static bool LooksFahrenheit(List<string[]> values, int column, bool comma)
    {
        var numbers =
            column < 0
                ? []
                : values
                    .Select(r => TableCells.Number(Cell(r, column), comma))
                    .OfType<double>()
                    .Order()
                    .ToArray();
        return numbers.Length > 0 && numbers[numbers.Length / 2] > 90;
    }

    private static DateOrder Order(string name, ColumnRole?[] roles, List<string[]> values)
    {
        var column = Array.FindIndex(roles, r => r is ColumnRole.Time or ColumnRole.Date);
        if (column < 0)
        {
            return DateOrder.DayFirst;
        }

        string? doubtful = null;
        foreach (var row in values)
        {
            var cell = Cell(row, column);
            var end = cell.Trim().IndexOfAny([' ', 'T']);
            if (
                TableCells.Parts(end < 0 ? cell : cell.Trim()[..end])
                is not { Mark: '/', First: <= 31 } parts
            )
            {
                continue;
            }

            if (parts.First > 12)
            {
                return DateOrder.DayFirst;
            }

            if (parts.Second > 12)
            {
                return DateOrder.MonthFirst;
            }

            doubtful ??= cell;
        }

        return doubtful is null
            ? DateOrder.DayFirst
            : throw Wrong(name, "table_dates", doubtful, values.Count);
    }

    // A short word must stand alone: "c" is in "depth_cm" too.
    private static bool Has(string header, string word)
    {
        var text = header.ToLowerInvariant();
        return word.Length > 3
            ? text.Contains(word, StringComparison.Ordinal)
            : text.Split(
                    [' ', '_', '(', ')', '[', ']', '.', '/', '-'],
                    StringSplitOptions.RemoveEmptyEntries
                )
                .Contains(word, StringComparer.Ordinal);
    }

    private static bool IsValue(string cell) =>
        cell.Trim().Length > 0
        && (
            TableCells.Number(cell, comma: false) is not null
            || TableCells.Number(cell, comma: true) is not null
            || TableCells.Moment(cell) is not null
            || TableCells.Local(cell, DateOrder.DayFirst) is not null
            || TableCells.Local(cell, DateOrder.MonthFirst) is not null
        );

    private static string Cell(string[] row, int column) => column < row.Length ? row[column] : "";

    private static InputProblem Wrong(string name, string code, params object[] values) =>
        new(name, "", Words.Of("readings." + code, null, values));
}
