using System.Collections.Immutable;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Readings;
using Heapwright.Core.Simulation;
using UnitsNet;

namespace Heapwright.Validation.Forecasts;

/// <summary>A heap that was measured, and from which of its days it is forecast.</summary>
/// <param name="Name">A short name.</param>
/// <param name="Heap">What is known of it.</param>
/// <param name="Readings">What was read in its core, in order of time; readings of one time follow one another.</param>
/// <param name="Forecasts">From which day to which later one.</param>
public sealed record MeasuredCourse(
    string Name,
    SimulationQuestion Heap,
    ImmutableArray<(double Day, double Celsius)> Readings,
    ImmutableArray<(double From, double To)> Forecasts
)
{
    /// <summary>What was read at a day, the mean of the readings of that time.</summary>
    /// <param name="day">Days since building.</param>
    public double At(double day) =>
        Readings.Where(r => Math.Abs(r.Day - day) < 0.05).Average(r => r.Celsius);

    /// <summary>The forecast from a day.</summary>
    /// <param name="from">Days since building.</param>
    /// <param name="to">Days since building.</param>
    public ForecastQuestion Question(double from, double to) =>
        new()
        {
            Heap = Heap,
            Readings =
            [
                .. Readings
                    .Where(r => r.Day <= from)
                    .Select(r => new ProbeReading(
                        r.Day,
                        Temperature.FromDegreesCelsius(r.Celsius)
                    )),
            ],
            FromDay = from,
            AheadDays = to - from,
            DecisionDays = to - from,
        };
}
