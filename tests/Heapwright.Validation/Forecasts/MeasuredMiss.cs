using Heapwright.Core.Forecasts;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Validation.Forecasts;

/// <summary>One forecast of a measured heap, held against what was read then.</summary>
/// <param name="From">The day it was made.</param>
/// <param name="To">The day it was made for.</param>
/// <param name="Error">Middle of the forecast less what was read, K.</param>
/// <param name="PriorError">The same for what is said without any reading.</param>
/// <param name="LastError">The same for the last reading.</param>
/// <param name="IsInside">Whether what was read lies in the 90 % band.</param>
public sealed record MeasuredMiss(
    double From,
    double To,
    double Error,
    double PriorError,
    double LastError,
    bool IsInside
)
{
    /// <summary>All forecasts of a heap, in order of time.</summary>
    /// <param name="course">The heap.</param>
    public static MeasuredMiss[] Of(MeasuredCourse course) =>
        [
            .. course.Forecasts.Select(f =>
            {
                var question = course.Question(f.From, f.To);
                var fitted = Ahead(question);
                var prior = Ahead(question with { Readings = [] });
                var truth = course.At(f.To);
                return new MeasuredMiss(
                    f.From,
                    f.To,
                    Percentiles.At(fitted, 0.5) - truth,
                    Percentiles.At(prior, 0.5) - truth,
                    course.At(f.From) - truth,
                    truth >= Percentiles.At(fitted, 0.05) && truth <= Percentiles.At(fitted, 0.95)
                );
            }),
        ];

    /// <summary>The root mean square of errors.</summary>
    /// <param name="misses">Forecasts.</param>
    /// <param name="error">Which error.</param>
    public static double Root(IEnumerable<MeasuredMiss> misses, Func<MeasuredMiss, double> error) =>
        Math.Sqrt(misses.Average(m => error(m) * error(m)));

    /// <summary>
    /// In what share of forecasts the band held, and between which shares nine in ten drawn anew lie. Forecasts that follow
    /// one another are alike: they are drawn in blocks of three of one heap.
    /// </summary>
    /// <param name="heaps">The forecasts of each heap, in order of time.</param>
    public static (double Share, double Low, double High) Coverage(
        IReadOnlyList<MeasuredMiss[]> heaps
    )
    {
        const int Block = 3;
        const int Draws = 4000;
        var stream = new SplitMix64(SplitMix64.SeedFor(1, "blocks of forecasts"));
        var all = heaps.Sum(h => h.Length);
        var shares = new double[Draws];
        for (var d = 0; d < Draws; d++)
        {
            var inside = 0;
            foreach (var heap in heaps)
            {
                for (var n = 0; n < heap.Length; )
                {
                    var start = (int)(stream.NextUnit() * Math.Max(1, heap.Length - Block + 1));
                    for (var k = 0; k < Block && n < heap.Length; k++, n++)
                    {
                        inside += heap[Math.Min(start + k, heap.Length - 1)].IsInside ? 1 : 0;
                    }
                }
            }

            shares[d] = (double)inside / all;
        }

        Array.Sort(shares);
        return (
            (double)heaps.Sum(h => h.Count(m => m.IsInside)) / all,
            Percentiles.At(shares, 0.05),
            Percentiles.At(shares, 0.95)
        );
    }

    private static double[] Ahead(ForecastQuestion question)
    {
        double[] core =
        [
            .. Forecaster.Run(question, TestContext.Current.CancellationToken).Core[^1],
        ];
        Array.Sort(core);
        return core;
    }
}
