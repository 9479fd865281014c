using System.Collections.Immutable;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Readings;
using Heapwright.Core.Simulation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Lessons;

/// <summary>
/// What would be read off a simulated heap at given times: what each member says, the error of the model (the one that
/// wanders and the one that lasts, docs/models/forecast.md) and the errors of dial and hand on top.
/// </summary>
internal static class ReadingDraws
{
    /// <summary>The readings of the core among all that were digested, in order of time.</summary>
    /// <param name="question">The question.</param>
    public static ImmutableArray<DigestedReading> CoreOf(ForecastQuestion question) =>
        [
            .. ReadingDigest
                .Of(question)
                .Where(r => !r.Moisture && r.Spot == ProbeSpot.Core)
                .GroupBy(r => r.Day)
                .Select(g => g.First()),
        ];

    /// <summary>Draws them.</summary>
    /// <param name="run">The heap, run at least to the last reading.</param>
    /// <param name="unknowns">Its members.</param>
    /// <param name="readings">When and how it was read.</param>
    /// <param name="lasting">Shape [member]: the error of the model that lasts, in full, K.</param>
    /// <param name="stream">Random numbers.</param>
    /// <returns>Shape [member][reading]: °C, or % of wet mass.</returns>
    public static double[][] Of(
        EnsembleRun run,
        Unknowns unknowns,
        IReadOnlyList<DigestedReading> readings,
        double[] lasting,
        ref SplitMix64 stream
    )
    {
        var predicted = ProbeModel.Predict(run, readings, unknowns.Offset, unknowns.Deeper);
        var drawn = new double[unknowns.Count][];
        for (var i = 0; i < drawn.Length; i++)
        {
            var row = drawn[i] = new double[readings.Count];
            var wander = Normal(ref stream);
            for (var r = 0; r < row.Length; r++)
            {
                var noise = readings[r].Deviation * Normal(ref stream);
                row[r] = predicted[r][i] + noise;
                if (readings[r].Moisture)
                {
                    continue;
                }

                if (r > 0)
                {
                    wander = Onwards(wander, readings[r].Day - readings[r - 1].Day, ref stream);
                }

                var excess = predicted[r][i] - run.Question.Weather.At(readings[r].Day).Air;
                row[r] +=
                    (ErrorModel.Size(excess) * wander) + (ErrorModel.Warm(excess) * lasting[i]);
            }
        }

        return drawn;
    }

    /// <summary>Errors that last, of a heap of which nothing is known yet: most heaps have little of them.</summary>
    /// <param name="members">How many.</param>
    /// <param name="stream">Random numbers.</param>
    /// <returns>Shape [member]: K.</returns>
    public static double[] UsualLasting(int members, ref SplitMix64 stream)
    {
        var lasting = new double[members];
        for (var i = 0; i < members; i++)
        {
            var size = -ErrorModel.LastingUsual * Math.Log(1 - stream.NextUnit());
            lasting[i] = size * Normal(ref stream);
        }

        return lasting;
    }

    /// <summary>The error that wanders, some time later, on the scale on which it is standard normal.</summary>
    /// <param name="wander">Before.</param>
    /// <param name="days">How much later.</param>
    /// <param name="stream">Random numbers.</param>
    public static double Onwards(double wander, double days, ref SplitMix64 stream)
    {
        var kept = Math.Exp(-days / ErrorModel.Memory);
        return (kept * wander) + (Math.Sqrt(1 - (kept * kept)) * Normal(ref stream));
    }

    /// <summary>A standard normal number.</summary>
    /// <param name="stream">Random numbers.</param>
    public static double Normal(ref SplitMix64 stream) =>
        NormalDistribution.Quantile(Math.Clamp(stream.NextUnit(), 1e-9, 1 - 1e-9));
}
