using System.Collections.Immutable;
using Heapwright.Core.Readings;
using Heapwright.Core.Simulation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Forecasts;

/// <summary>Brings readings into a number that can be fitted: loggers write more than there is to learn.</summary>
internal static class ReadingDigest
{
    /// <summary>The most that is fitted.</summary>
    public const int Most = 120;

    // What differs from one reading to the next: the dial, the wait, and where exactly the probe went in.
    private const double CoreDeviation = 2;
    private const double OutsideDeviation = 3;

    /// <summary>The readings up to a day, in order of time.</summary>
    /// <param name="question">The question.</param>
    public static ImmutableArray<DigestedReading> Of(ForecastQuestion question)
    {
        var known = question.Readings.Where(r => r.Day <= question.FromDay && r.Day >= 0).ToArray();
        var all = new List<DigestedReading>();
        for (var bin = 0.0; ; bin = bin == 0 ? 0.125 : bin * 2)
        {
            all.Clear();
            all.AddRange(
                known
                    .GroupBy(r => (r.Spot, r.Depth?.Meters, Bin(r.Day, bin)))
                    .Select(g => Mean([.. g], question.Heap.Weather))
            );
            if (all.Count <= Most)
            {
                break;
            }
        }

        all.AddRange(
            question
                .Moisture.Where(m => m.Day <= question.FromDay && m.Day >= 0)
                .Select(m => new DigestedReading(
                    m.Day,
                    m.Moisture.Typical,
                    (m.Moisture.High - m.Moisture.Low) / 2 / NormalDistribution.Z95,
                    ProbeSpot.Core,
                    null,
                    0,
                    Moisture: true
                ))
        );
        return [.. all.OrderBy(r => r.Day).ThenBy(r => r.Spot).ThenBy(r => r.Depth)];
    }

    private static double Bin(double day, double width) =>
        width > 0 ? Math.Floor(day / width) : day;

    private static DigestedReading Mean(ProbeReading[] group, Weather weather)
    {
        var deviation = group[0].Spot == ProbeSpot.Core ? CoreDeviation : OutsideDeviation;
        var day = group.Average(r => r.Day);
        var celsius = group.Average(r => r.Temperature.DegreesCelsius);
        var apart =
            group.Max(r => r.Temperature.DegreesCelsius)
            - group.Min(r => r.Temperature.DegreesCelsius);
        return new DigestedReading(
            day,
            celsius,
            deviation,
            group[0].Spot,
            group[0].Depth?.Meters,
            celsius - weather.At(day).Air,
            Agreed: group.Length > 1 && apart <= 2 * deviation
        );
    }
}
