using System.Text.Json.Nodes;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>The air round a heap with a diary: where it is known from, and how it goes into a question.</summary>
public static class HeapAir
{
    /// <summary>Where the air of a heap is known from.</summary>
    /// <param name="record">The heap.</param>
    public static AirSource SourceOf(HeapRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (JsonObject.Create(record.Kept.Question)?["weather"] is not null)
        {
            return AirSource.Told;
        }

        var isNoted = Noted(record).Length > 0;
        return record.Air is null
            ? (isNoted ? AirSource.Noted : AirSource.Assumed)
            : (isNoted ? AirSource.MonthlyMeansAndNotes : AirSource.MonthlyMeans);
    }

    /// <summary>Puts the weather into a question that has none; leaves it out where nothing is known.</summary>
    /// <param name="question">The question.</param>
    /// <param name="record">The heap.</param>
    /// <param name="days">How many days from building on are needed.</param>
    internal static void Put(JsonObject question, HeapRecord record, double days)
    {
        if (question["weather"] is not null)
        {
            return;
        }

        var noted = Noted(record);
        if (record.Air is { } air)
        {
            question["weather"] = new UsualAir(air).Weather(
                record.Kept.BuiltAt,
                days,
                record.Kept.TimeZone(),
                noted
            );
        }
        else if (noted.Length > 0)
        {
            question["weather"] = new JsonObject
            {
                ["air_c"] = Math.Clamp(noted.Average(n => n.Celsius), -40, 50),
            };
        }
    }

    private static (Instant At, double Celsius)[] Noted(HeapRecord record) =>
        [
            .. record
                .Diary.Standing.Select(s => s.Entry)
                .OfType<TemperatureEntry>()
                .Where(r => record.Believed(r.Id) && r.Air is not null)
                .Select(r => (Instant.FromDateTimeOffset(r.At), r.Air!.Value.DegreesCelsius)),
        ];
}
