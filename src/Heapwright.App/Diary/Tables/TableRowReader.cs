using System.Globalization;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Core.Reasons;
using Heapwright.Core.Simulation;
using nietras.SeparatedValues;
using NodaTime;
using UnitsNet;

namespace Heapwright.App.Diary.Tables;

/// <summary>Makes entries of the rows of a table. The same row of the same heap gives the same ids, however often it is read.</summary>
/// <param name="form">How the table is written.</param>
/// <param name="arrival">The heap and the moment.</param>
/// <param name="zone">The zone of times without an offset.</param>
/// <param name="builtAt">When the heap was built, for a column of days.</param>
public sealed class TableRowReader(
    TableForm form,
    Arrival arrival,
    DateTimeZone zone,
    DateTimeOffset builtAt
)
{
    private readonly int time = form.Column(ColumnRole.Time);
    private readonly int date = form.Column(ColumnRole.Date);
    private readonly int clock = form.Column(ColumnRole.Clock);
    private readonly int day = form.Column(ColumnRole.Day);
    private readonly int temperature = form.Column(ColumnRole.Temperature);
    private readonly int spot = form.Column(ColumnRole.Spot);
    private readonly int depth = form.Column(ColumnRole.Depth);
    private readonly int air = form.Column(ColumnRole.Air);
    private readonly int done = form.Column(ColumnRole.Event);
    private Instant last = Instant.MinValue;

    /// <summary>The entries of a row, or why it is refused.</summary>
    /// <param name="row">The row.</param>
    /// <param name="entries">Takes the entries.</param>
    /// <returns>Null where it was taken.</returns>
    public Reason? Read(SepReader.Row row, ICollection<DiaryEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var warm = Cell(row, temperature).Trim();
        var happened = Cell(row, done).Trim();
        if (warm.IsEmpty && happened.IsEmpty)
        {
            return Reason.Of("readings.row_empty");
        }

        if (At(row, out var fault) is not { } at)
        {
            return fault;
        }

        TemperatureEntry? reading = null;
        if (!warm.IsEmpty)
        {
            fault = Reading(row, warm, at, out reading);
            if (fault is not null)
            {
                return fault;
            }
        }

        if (!happened.IsEmpty)
        {
            entries.Add(Happening(happened.ToString(), at));
        }

        if (reading is not null)
        {
            entries.Add(reading);
        }

        return null;
    }

    private Reason? Reading(
        SepReader.Row row,
        ReadOnlySpan<char> warm,
        DateTimeOffset at,
        out TemperatureEntry? reading
    )
    {
        reading = null;
        if (TableCells.Number(warm, form.DecimalComma) is not { } degrees)
        {
            return Reason.Of("readings.row_temperature", Short(warm));
        }

        var lowest = form.Fahrenheit ? -459.67 : EntryLimits.ColdestC;
        var highest = form.Fahrenheit ? 3632 : EntryLimits.HottestC;
        if (degrees < lowest || degrees > highest)
        {
            return Reason.Of("readings.row_range", Short(warm), lowest, highest);
        }

        var place = Cell(row, spot).Trim().ToString();
        var known = TableSpots.Of(place);
        if (place.Length > EntryLimits.LongestInstrument)
        {
            return Reason.Of("readings.row_spot", Short(place));
        }

        if (
            Optional(
                row,
                depth,
                0,
                form.DepthInInches ? 196 : EntryLimits.DeepestCm,
                out var deep
            ) is
            { } wrongDepth
        )
        {
            return wrongDepth;
        }

        if (
            Optional(
                row,
                air,
                form.Fahrenheit ? -148 : -100,
                form.Fahrenheit ? 212 : 100,
                out var outside
            ) is
            { } wrongAir
        )
        {
            return wrongAir;
        }

        var celsius = Celsius(degrees);
        var what = string.Create(
            CultureInfo.InvariantCulture,
            $"temperature {at.UtcTicks} {celsius.DegreesCelsius} {place} {deep} {outside}"
        );
        reading = new TemperatureEntry
        {
            Id = DeterministicIds.Of(arrival.HeapId, what),
            HeapId = arrival.HeapId,
            At = at,
            Zone = arrival.Zone,
            ReceivedAt = arrival.At,
            Way = arrival.Way,
            Temperature = celsius,
            GivenInFahrenheit = form.Fahrenheit,
            Spot = known ?? ProbeSpot.Core,
            Instrument = known is null ? place : "",
            Depth = deep is { } value
                ? Length.FromCentimeters(
                    form.DepthInInches ? Math.Round(Length.FromInches(value).Centimeters, 6) : value
                )
                : null,
            Air = outside is { } degreesOutside ? Celsius(degreesOutside) : null,
        };
        return null;
    }

    private Temperature Celsius(double degrees) =>
        form.Fahrenheit
            ? EntryReader.FromFahrenheit(degrees)
            : Temperature.FromDegreesCelsius(degrees);

    // What is no deed with all it needs is kept as a note, in the words it has.
    private DiaryEntry Happening(string words, DateTimeOffset at)
    {
        var id = DeterministicIds.Of(
            arrival.HeapId,
            string.Create(CultureInfo.InvariantCulture, $"event {at.UtcTicks} {words}")
        );
        if (Deed(words) is { } deed)
        {
            return new EventEntry
            {
                Id = id,
                HeapId = arrival.HeapId,
                At = at,
                Zone = arrival.Zone,
                ReceivedAt = arrival.At,
                Way = arrival.Way,
                Deed = deed,
            };
        }

        return new NoteEntry
        {
            Id = id,
            HeapId = arrival.HeapId,
            At = at,
            Zone = arrival.Zone,
            ReceivedAt = arrival.At,
            Way = arrival.Way,
            Text =
                words.Length <= EntryLimits.LongestNote ? words : words[..EntryLimits.LongestNote],
        };
    }

    private HeapDeed? Deed(string words)
    {
        var parts = words.Split(' ', 2, StringSplitOptions.TrimEntries);
        var amount = parts.Length == 2 ? TableCells.Number(parts[1], form.DecimalComma) : null;
        return (parts[0].ToLowerInvariant(), amount) switch
        {
            ("turn" or "turned", null) when parts.Length == 1 => new TurnedDeed(
                Thoroughness.Fair,
                TurnedPart.All
            ),
            ("water" or "watered", >= 0 and <= EntryLimits.MostLitres) => new WateredDeed
            {
                Litres = amount.Value,
            },
            ("rain" or "rained", >= 0 and <= EntryLimits.MostRainMm) => new RainedDeed
            {
                Millimetres = amount.Value,
            },
            _ => null,
        };
    }

    private DateTimeOffset? At(SepReader.Row row, out Reason? fault)
    {
        fault = null;
        if (day >= 0)
        {
            var cell = Cell(row, day);
            if (TableCells.Number(cell, form.DecimalComma) is { } days and >= -3650 and <= 3650)
            {
                return builtAt.AddDays(days);
            }

            fault = Reason.Of("readings.row_day", Short(cell));
            return null;
        }

        var column = time >= 0 ? time : date;
        var text = Cell(row, column);
        if (TableCells.Moment(text) is { } moment)
        {
            return moment;
        }

        var local = TableCells.Local(text, form.Dates);
        if (local is not null && time < 0 && clock >= 0)
        {
            local = TableCells.Clock(Cell(row, clock)) is { } hour
                ? local.Value.Date.At(hour)
                : null;
        }

        if (local is not { } onTheClock)
        {
            fault = Reason.Of("readings.row_time", Short(text));
            return null;
        }

        return InZone(onTheClock, out fault);
    }

    // The hour that comes twice in autumn is the first one, unless the row before it was later than that.
    private DateTimeOffset? InZone(LocalDateTime local, out Reason? fault)
    {
        fault = null;
        var mapping = zone.MapLocal(local);
        if (mapping.Count == 0)
        {
            fault = Reason.Of(
                "readings.row_skipped_hour",
                local.ToString("uuuu-MM-dd HH:mm", CultureInfo.InvariantCulture),
                zone.Id
            );
            return null;
        }

        var moment = mapping.First();
        if (mapping.Count == 2 && moment.ToInstant() < last)
        {
            moment = mapping.Last();
        }

        last = moment.ToInstant();
        return moment.ToDateTimeOffset();
    }

    private Reason? Optional(
        SepReader.Row row,
        int column,
        double lowest,
        double highest,
        out double? value
    )
    {
        value = null;
        var cell = Cell(row, column).Trim();
        if (cell.IsEmpty)
        {
            return null;
        }

        value = TableCells.Number(cell, form.DecimalComma);
        return value >= lowest && value <= highest
            ? null
            : Reason.Of("readings.row_range", Short(cell), lowest, highest);
    }

    private static ReadOnlySpan<char> Cell(SepReader.Row row, int column) =>
        column >= 0 && column < row.ColCount ? row[column].Span : default;

    private static string Short(ReadOnlySpan<char> cell) =>
        cell.Length <= 40 ? cell.ToString() : cell[..37].ToString() + "...";
}
