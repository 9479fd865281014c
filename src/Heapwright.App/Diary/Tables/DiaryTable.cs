using Heapwright.App.Texts;
using Heapwright.Core.Readings;

namespace Heapwright.App.Diary.Tables;

/// <summary>What stands in the diary of a heap, as a table (CSV) with one row for each entry, in °C and centimetres.</summary>
public static class DiaryTable
{
    /// <summary>The columns.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    ["time", "day", "entry", "temperature_c", "spot", "depth_cm", "air_c", "what", "id"];

    /// <summary>The table; its header alone where nothing was noted.</summary>
    /// <param name="record">The heap.</param>
    /// <param name="measures">The units and number format of the sentences.</param>
    public static string Of(HeapRecord record, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (record.Diary.Standing.Count == 0)
        {
            return string.Join(',', Columns) + "\n";
        }

        using var table = new TableWriter();
        foreach (var entry in record.Diary.Standing.Select(s => s.Entry))
        {
            var reading = entry as TemperatureEntry;
            using var row = table.Row();
            row["time"].Set(EntryJson.Time(entry.At));
            TableWriter.Number(row, "day", Math.Round(record.DayOf(entry.At), 3));
            row["entry"].Set(Kind(entry));
            TableWriter.Number(row, "temperature_c", reading?.Temperature.DegreesCelsius);
            row["spot"].Set(reading is null ? "" : EntryWords.Of(reading.Spot));
            TableWriter.Number(row, "depth_cm", reading?.Depth?.Centimeters);
            TableWriter.Number(row, "air_c", reading?.Air?.DegreesCelsius);
            TableWriter.Words(row, "what", EntryText.Of(entry, measures));
            row["id"].Set(entry.Id.ToString("D"));
        }

        return table.ToString();
    }

    private static string Kind(DiaryEntry entry) =>
        entry switch
        {
            TemperatureEntry => "temperature",
            SignEntry => "sign",
            EventEntry happening => EntryWords.Of(happening.Deed),
            NoteEntry => "note",
            PhotoEntry => "photo",
            _ => "correction",
        };
}
