using System.Globalization;
using Heapwright.Core.Simulation;

namespace Heapwright.App.Contract;

/// <summary>
/// A series of weather, row by row: from a table in a file with the columns time, air_c and, if wanted, wind_m_s, rain_mm,
/// humidity_pct and sun_w_m2, or from a list of rows in that order.
/// </summary>
internal sealed class HourlyWeather
{
    /// <summary>The most rows that are read: a year by the hour, and some more.</summary>
    public const int MostRows = 10_000;

    /// <summary>The columns, in the order of the rows of a list.</summary>
    public static readonly string[] Columns =
    [
        "time",
        "air_c",
        "wind_m_s",
        "rain_mm",
        "humidity_pct",
        "sun_w_m2",
    ];

    /// <summary>Where nothing is said of it: relative humidity, %.</summary>
    public const double UsualHumidity = 70;

    private static readonly (double Low, double High)[] Allowed =
    [
        (-3650, 3650),
        (-40, 50),
        (0, 60),
        (0, 300),
        (0, 100),
        (0, 1500),
    ];

    private readonly List<(DateTimeOffset? Time, double Day, double[] Values)> rows = [];

    private HourlyWeather() { }

    /// <summary>The time of the first row; null where days are counted instead.</summary>
    public DateTimeOffset? First => rows[0].Time;

    /// <summary>The columns that no row has.</summary>
    public IEnumerable<string> Absent =>
        Enumerable
            .Range(2, Columns.Length - 2)
            .Where(c => rows.TrueForAll(r => double.IsNaN(r.Values[c])))
            .Select(c => Columns[c]);

    /// <summary>A list of rows.</summary>
    /// <param name="input">The list.</param>
    /// <exception cref="InputProblem">A row is wrong.</exception>
    public static HourlyWeather OfRows(Input input)
    {
        var series = new HourlyWeather();
        foreach (var row in input.Items(2, MostRows))
        {
            var cells = row.Items(2, Columns.Length);
            var values = Unknown();
            var time = cells[0].IsText ? StartTime.Read(cells[0]) : (DateTimeOffset?)null;
            values[0] = time is null ? cells[0].Number(Allowed[0].Low, Allowed[0].High) : 0;
            for (var c = 1; c < cells.Count; c++)
            {
                if (!cells[c].IsNull)
                {
                    values[c] = cells[c].Number(Allowed[c].Low, Allowed[c].High);
                }
            }

            if (double.IsNaN(values[1]))
            {
                throw cells[1].Problem("null was found; the air temperature in °C is needed");
            }

            series.Add(time, values, cells[0].Problem);
        }

        return series;
    }

    /// <summary>A table with a header line.</summary>
    /// <param name="text">The table, its cells separated by commas.</param>
    /// <param name="file">Its name in messages.</param>
    /// <exception cref="InputProblem">A line is wrong.</exception>
    public static HourlyWeather OfTable(string text, string file)
    {
        var lines = text.TrimStart('\uFEFF').Split('\n');
        var places = Header(lines[0], file);
        var series = new HourlyWeather();
        for (var l = 1; l < lines.Length; l++)
        {
            if (string.IsNullOrWhiteSpace(lines[l]))
            {
                continue;
            }

            if (series.rows.Count == MostRows)
            {
                throw At(file, l, null, $"is one row too many; at most {MostRows} are read");
            }

            var cells = Cells(lines[l]);
            if (cells.Length != places.Length)
            {
                throw At(
                    file,
                    l,
                    null,
                    $"has {cells.Length} cells; the header has {places.Length}, and so must every line"
                );
            }

            series.Read(cells, places, file, l);
        }

        return series.rows.Count >= 2
            ? series
            : throw new InputProblem(
                file,
                "",
                $"has {series.rows.Count} rows of weather; at least 2 are needed"
            );
    }

    /// <summary>The weather as the simulation takes it.</summary>
    /// <param name="start">When the heap is built; not used where days are counted.</param>
    /// <param name="days">How long it is followed.</param>
    /// <returns>The weather, and from which to which day it reaches.</returns>
    public (Weather Weather, double From, double To) ToWeather(DateTimeOffset start, double days)
    {
        var at = rows.ConvertAll(r => r.Time is { } time ? (time - start).TotalDays : r.Day);
        // What lies long before or after would only pull the mean, which the ground takes.
        var first = Math.Max(0, at.FindLastIndex(d => d <= 0));
        var last = at.FindIndex(d => d >= days);
        last = last < 0 ? at.Count - 1 : last;
        last = Math.Max(last, first);
        var moments = new WeatherMoment[last - first + 1];
        for (var i = first; i <= last; i++)
        {
            var v = rows[i].Values;
            var gap = i + 1 < at.Count ? at[i + 1] - at[i] : at[i] - at[i - 1];
            moments[i - first] = new WeatherMoment(
                v[1],
                Or(v[2], 1),
                Or(v[3], 0) / gap,
                Or(v[4], UsualHumidity) / 100,
                Or(v[5], 0)
            );
        }

        return (Weather.Series([.. at[first..(last + 1)]], moments), at[0], at[^1]);
    }

    private static double Or(double value, double usual) => double.IsNaN(value) ? usual : value;

    private static double[] Unknown()
    {
        var values = new double[Columns.Length];
        Array.Fill(values, double.NaN);
        return values;
    }

    private void Add(DateTimeOffset? time, double[] values, Func<string, InputProblem> problem)
    {
        if (rows.Count > 0)
        {
            var before = rows[^1];
            if (before.Time is null != time is null)
            {
                throw problem("times and days are mixed; write all rows the same way");
            }

            if (time is { } t ? t <= before.Time : values[0] <= before.Day)
            {
                throw problem(
                    "is not after the row before it; the rows must stand in order of time"
                );
            }
        }

        rows.Add((time, values[0], values));
    }

    private static int[] Header(string line, string file)
    {
        var names = Cells(line);
        var places = new int[names.Length];
        for (var c = 0; c < names.Length; c++)
        {
            places[c] = Array.IndexOf(Columns, names[c]);
            if (places[c] < 0)
            {
                throw At(
                    file,
                    0,
                    null,
                    names.Length == 1 && line.Contains(';', StringComparison.Ordinal)
                        ? "separates its cells by semicolons; commas are needed, and points in numbers"
                        : $"the column \"{Short(names[c])}\" is not known; the nearest is \"{Nearest.Of(names[c], Columns)}\" (known: {string.Join(", ", Columns)})"
                );
            }

            if (Array.IndexOf(places, places[c]) < c)
            {
                throw At(file, 0, null, $"the column \"{names[c]}\" stands twice; once is allowed");
            }
        }

        foreach (var needed in new[] { 0, 1 })
        {
            if (!places.Contains(needed))
            {
                throw At(
                    file,
                    0,
                    null,
                    $"the column \"{Columns[needed]}\" is missing; it is needed (known: {string.Join(", ", Columns)})"
                );
            }
        }

        return places;
    }

    private void Read(string[] cells, int[] places, string file, int line)
    {
        var values = Unknown();
        DateTimeOffset? time = null;
        for (var c = 0; c < cells.Length; c++)
        {
            var column = places[c];
            if (column == 0 && StartTime.Of(cells[c]) is { } found)
            {
                time = found;
                values[0] = 0;
                continue;
            }

            if (cells[c].Length == 0 && column > 1)
            {
                continue;
            }

            var (low, high) = Allowed[column];
            if (
                !double.TryParse(
                    cells[c],
                    NumberStyles.Float,
                    CultureInfo.InvariantCulture,
                    out values[column]
                ) || !double.IsFinite(values[column])
            )
            {
                throw At(
                    file,
                    line,
                    Columns[column],
                    column == 0
                        ? $"\"{Short(cells[c])}\" is neither a time with an offset, such as 2026-05-02T09:00:00+02:00, nor a number of days since building"
                        : $"\"{Short(cells[c])}\" is not a number; {Number(low)} to {Number(high)} is allowed"
                );
            }

            if (values[column] < low || values[column] > high)
            {
                throw At(
                    file,
                    line,
                    Columns[column],
                    $"{Number(values[column])} is out of range; {Number(low)} to {Number(high)} is allowed"
                );
            }
        }

        Add(time, values, sentence => At(file, line, Columns[0], sentence));
    }

    private static string[] Cells(string line) =>
        [.. line.TrimEnd('\r').Split(',').Select(c => c.Trim().Trim('"').Trim())];

    private static string Short(string text) => text.Length <= 40 ? text : text[..37] + "...";

    private static string Number(double value) => value.ToString(CultureInfo.InvariantCulture);

    private static InputProblem At(string file, int line, string? column, string sentence) =>
        new(
            file,
            string.Create(CultureInfo.InvariantCulture, $"line {line + 1}")
                + (column is null ? "" : $", column {column}"),
            sentence
        );
}
