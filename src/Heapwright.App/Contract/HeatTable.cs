using System.Globalization;
using Heapwright.App.HeatRecords;
using nietras.SeparatedValues;

namespace Heapwright.App.Contract;

/// <summary>
/// A record of heat as a table: a header, then rows with time or day, probe, temperature and event. Cells are separated by
/// commas, semicolons or tabs; where it is not a comma, numbers may have a decimal comma.
/// </summary>
/// <param name="reader">Reads the rest of the question.</param>
/// <param name="file">The name to use in messages.</param>
internal sealed class HeatTable(HygieneReader reader, string file)
{
    private static readonly string[] Columns =
    [
        "time",
        "day",
        "probe",
        "temperature_c",
        "temperature_f",
        "event",
    ];

    private static readonly string[] Events = ["turn", "turned"];

    private readonly List<(HeatEntry Entry, int Line)> entries = [];
    private int turns;
    private string[] header = [];
    private bool decimalComma;

    /// <summary>Reads a table.</summary>
    /// <param name="text">The table.</param>
    /// <param name="options">What was said beside it; the process is needed.</param>
    /// <exception cref="InputProblem">A row is wrong.</exception>
    public HygieneQuestion Read(string text, HygieneOptions options)
    {
        if (options.Process is null)
        {
            throw new InputProblem(
                file,
                "",
                "is a table, which does not say how the heap is kept; add --process "
                    + string.Join("|", Library.HygieneRuleReader.ProcessWords)
            );
        }

        text = text.TrimStart('\uFEFF');
        var separator = Separator(text);
        decimalComma = separator != ',';
        using var rows = Sep.New(separator)
            .Reader(o => o with { HasHeader = false, DisableColCountCheck = true, Unescape = true })
            .FromText(text);
        foreach (var row in rows)
        {
            var cells = new string[row.ColCount];
            for (var c = 0; c < cells.Length; c++)
            {
                cells[c] = row[c].ToString().Trim();
            }

            if (Array.TrueForAll(cells, c => c.Length == 0))
            {
                continue;
            }

            if (header.Length == 0)
            {
                header = Header(cells, row.LineNumberFrom);
            }
            else
            {
                Row(cells, row.LineNumberFrom);
            }
        }

        if (entries.Count == turns)
        {
            throw new InputProblem(file, "", "has no row with a temperature; at least 1 is needed");
        }

        List<HeatEntry> all = [.. entries.Select(e => e.Entry)];
        reader.SameForm(all, file, i => Place(entries[i].Line, null));
        return reader.Question(
            all,
            header.Contains("event", StringComparer.Ordinal),
            options,
            file
        );
    }

    private static char Separator(string text)
    {
        var end = text.AsSpan().IndexOfAny('\r', '\n');
        var first = end < 0 ? text : text[..end];
        return first.Contains(';', StringComparison.Ordinal) ? ';'
            : first.Contains('\t', StringComparison.Ordinal) ? '\t'
            : ',';
    }

    private string[] Header(string[] cells, int line)
    {
        for (var c = 0; c < cells.Length; c++)
        {
            if (!Columns.Contains(cells[c], StringComparer.Ordinal))
            {
                throw At(
                    line,
                    null,
                    $"the column \"{Short(cells[c])}\" is not known; the nearest is \"{Nearest.Of(cells[c], Columns)}\" (known: {string.Join(", ", Columns)})"
                );
            }

            if (Array.IndexOf(cells, cells[c]) < c)
            {
                throw At(line, null, $"the column \"{cells[c]}\" stands twice; once is allowed");
            }
        }

        OneOf(cells, line, "time", "day");
        OneOf(cells, line, "temperature_c", "temperature_f");
        return cells;
    }

    private void OneOf(string[] cells, int line, string one, string other)
    {
        var found = cells.Count(c => c == one || c == other);
        if (found != 1)
        {
            throw At(
                line,
                null,
                found == 0
                    ? $"has neither the column \"{one}\" nor \"{other}\"; one of them is needed"
                    : $"has the columns \"{one}\" and \"{other}\"; one of them is allowed"
            );
        }
    }

    private void Row(string[] cells, int line)
    {
        if (cells.Length != header.Length)
        {
            throw At(
                line,
                null,
                $"has {cells.Length} cells; the header has {header.Length}, and so must every line"
                    + (decimalComma ? "" : " (a decimal comma needs semicolons between the cells)")
            );
        }

        var time = Time(cells, line);
        var degrees = Cell(cells, "temperature_c");
        var fahrenheit = Cell(cells, "temperature_f");
        var happened = Cell(cells, "event");
        if (happened.Length > 0 && !Events.Contains(happened, StringComparer.OrdinalIgnoreCase))
        {
            throw At(
                line,
                "event",
                $"\"{Short(happened)}\" is not known; turn and turned are allowed, or nothing"
            );
        }

        if (degrees.Length > 0 || fahrenheit.Length > 0)
        {
            var (celsius, written) =
                fahrenheit.Length > 0
                    ? HygieneReader.Fahrenheit(
                        Number(
                            fahrenheit,
                            line,
                            "temperature_f",
                            Degrees.Fahrenheit(HygieneReader.Coldest),
                            Degrees.Fahrenheit(HygieneReader.Hottest)
                        )
                    )
                    : HygieneReader.Celsius(
                        Number(
                            degrees,
                            line,
                            "temperature_c",
                            HygieneReader.Coldest,
                            HygieneReader.Hottest
                        )
                    );
            Add(new HeatEntry(time, Probe(cells, line), celsius, written), line);
        }
        else if (happened.Length == 0)
        {
            throw At(line, null, "has neither a temperature nor an event; one of them is needed");
        }

        if (happened.Length > 0)
        {
            Add(HeatEntry.Turn(time), line);
        }
    }

    private void Add(HeatEntry entry, int line)
    {
        var most = entry.IsTurn ? HygieneReader.MostTurns : HygieneReader.MostReadings;
        if ((entry.IsTurn ? turns : entries.Count - turns) == most)
        {
            throw At(
                line,
                null,
                $"is one {(entry.IsTurn ? "turn" : "reading")} too many; at most {most} are read"
            );
        }

        turns += entry.IsTurn ? 1 : 0;
        entries.Add((entry, line));
    }

    private EntryTime Time(string[] cells, int line)
    {
        var text = Cell(cells, "time");
        if (text.Length == 0 && header.Contains("day", StringComparer.Ordinal))
        {
            return EntryTime.OfDay(Number(Cell(cells, "day"), line, "day", 0, EntryTime.MostDays));
        }

        return EntryTime.OfText(text)
            ?? throw At(
                line,
                "time",
                $"\"{Short(text)}\" is no time; write it such as 2026-05-02T09:30:00+02:00, or name the column day and write days since building"
            );
    }

    private string Probe(string[] cells, int line)
    {
        var name = Cell(cells, "probe");
        return name.Length == 0 ? reader.NamelessProbe()
            : name.Length <= 60 && !name.Any(char.IsControl) ? name
            : throw At(
                line,
                "probe",
                $"\"{Short(name)}\" is no name of a probe; 1 to 60 letters are allowed"
            );
    }

    private double Number(string cell, int line, string column, double low, double high)
    {
        var text =
            decimalComma && !cell.Contains('.', StringComparison.Ordinal)
                ? cell.Replace(',', '.')
                : cell;
        if (
            !double.TryParse(
                text,
                NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out var value
            ) || !double.IsFinite(value)
        )
        {
            throw At(
                line,
                column,
                $"\"{Short(cell)}\" is not a number; {Text(low)} to {Text(high)} is allowed"
                    + (
                        cell.Contains(',', StringComparison.Ordinal)
                            ? ", with a decimal point (a decimal comma needs semicolons between the cells)"
                            : ""
                    )
            );
        }

        return value >= low && value <= high
            ? value
            : throw At(
                line,
                column,
                $"{Short(cell)} is out of range; {Text(low)} to {Text(high)} is allowed"
                    + (
                        column == "temperature_c" && value > high
                            ? " (degrees Fahrenheit need the column temperature_f)"
                            : ""
                    )
            );
    }

    private string Cell(string[] cells, string column)
    {
        var place = Array.IndexOf(header, column);
        return place < 0 ? "" : cells[place];
    }

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Short(string text) => text.Length <= 40 ? text : text[..37] + "...";

    private static string Place(int line, string? column) =>
        string.Create(CultureInfo.InvariantCulture, $"line {line}")
        + (column is null ? "" : $", column {column}");

    private InputProblem At(int line, string? column, string sentence) =>
        new(file, Place(line, column), sentence);
}
