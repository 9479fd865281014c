using System.Collections.Immutable;
using Heapwright.App.Diary;
using Heapwright.App.Ports;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;

namespace Heapwright.App.Outlooks;

/// <summary>Holds the forecasts that were kept against the readings that came after them.</summary>
/// <param name="reader">Reads the diaries.</param>
/// <param name="forecasts">Where the forecasts are kept.</param>
public sealed class PastForecasts(ReadDiary reader, IForecastStore forecasts)
{
    /// <summary>How good they were on all heaps of the site, by how far ahead they looked.</summary>
    /// <param name="cancel">Gives up.</param>
    public async Task<ImmutableArray<ForecastScore>> Scores(CancellationToken cancel)
    {
        var misses = new List<ForecastMiss>();
        foreach (var heapId in (await forecasts.Latest(cancel)).Keys)
        {
            if (await reader.Of(heapId, null, cancel) is { } record)
            {
                misses.AddRange(Misses(record, await forecasts.Of(heapId, cancel)));
            }
        }

        return ForecastScore.Of(misses);
    }

    /// <summary>
    /// The readings of a heap against what was forecast before them. A forecast says what comes if the heap is left alone,
    /// so that readings after it was turned, wetted, fed or covered do not count against it.
    /// </summary>
    /// <param name="record">The heap with its diary.</param>
    /// <param name="kept">Its forecasts.</param>
    public static IEnumerable<ForecastMiss> Misses(
        HeapRecord record,
        IEnumerable<KeptForecast> kept
    )
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(kept);
        var done = record
            .Events.Where(e => e.Deed is TurnedDeed or WateredDeed or AddedDeed or CoveredDeed)
            .Select(e => record.DayOf(e.At))
            .ToArray();
        var readings = record
            .Diary.Standing.Select(s => s.Entry)
            .OfType<TemperatureEntry>()
            .Where(r => r.Spot == ProbeSpot.Core && record.Believed(r.Id))
            .Select(r => (Day: record.DayOf(r.At), r.Temperature.DegreesCelsius))
            .ToArray();
        foreach (var forecast in kept)
        {
            var until = done.Where(d => d > forecast.FromDay)
                .DefaultIfEmpty(double.PositiveInfinity)
                .Min();
            foreach (var (day, celsius) in readings)
            {
                if (day > forecast.FromDay && day < until && forecast.At(day) is { } expected)
                {
                    yield return new ForecastMiss(day - forecast.FromDay, expected, celsius);
                }
            }
        }
    }
}
