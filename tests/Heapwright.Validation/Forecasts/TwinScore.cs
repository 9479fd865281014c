using Heapwright.Core.Forecasts;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Validation.Forecasts;

/// <summary>How well a heap was forecast three days ahead after seven daily readings.</summary>
/// <param name="Error">Middle of the forecast less the truth, K.</param>
/// <param name="PriorError">The same for what is said without any reading.</param>
/// <param name="PersistenceError">The same for the last reading.</param>
/// <param name="Covered">Share of the three days in which the truth lies within the 90 % band.</param>
/// <param name="PriorCovered">The same for what is said without any reading.</param>
public sealed record TwinScore(
    double Error,
    double PriorError,
    double PersistenceError,
    double Covered,
    double PriorCovered
)
{
    /// <summary>Forecasts a twin.</summary>
    /// <param name="twin">The twin.</param>
    public static TwinScore Of(HeapTwin twin)
    {
        var truth = twin.Live(10);
        var readings = twin.Read(truth, Enumerable.Range(0, 7).Select(d => d + 0.8));
        var question = new ForecastQuestion
        {
            Heap = twin.Question(),
            Readings = readings,
            FromDay = 6.8,
            AheadDays = 3,
            DecisionDays = 3,
        };
        var fitted = Forecaster.Run(question, TestContext.Current.CancellationToken);
        var plain = Forecaster.Run(
            question with
            {
                Readings = [],
            },
            TestContext.Current.CancellationToken
        );
        var (error, covered) = Against(fitted, truth);
        var (priorError, priorCovered) = Against(plain, truth);
        return new TwinScore(
            error,
            priorError,
            readings[^1].Temperature.DegreesCelsius - HeapTwin.Core(truth, 9.8),
            covered,
            priorCovered
        );
    }

    private static (double Error, double Covered) Against(
        ForecastAnswer forecast,
        Core.Simulation.SimulationAnswer truth
    )
    {
        var (error, inside, times) = (0.0, 0, 0);
        for (var t = 0; t < forecast.Days.Length; t++)
        {
            double[] sorted = [.. forecast.Core[t]];
            Array.Sort(sorted);
            var value = HeapTwin.Core(truth, forecast.Days[t]);
            error = Percentiles.At(sorted, 0.5) - value;
            if (t > 0)
            {
                times++;
                inside +=
                    value >= Percentiles.At(sorted, 0.05) && value <= Percentiles.At(sorted, 0.95)
                        ? 1
                        : 0;
            }
        }

        return (error, (double)inside / times);
    }
}
