using Heapwright.Numerics.Assimilation;

namespace Heapwright.Core.Forecasts;

/// <summary>
/// What the model gets wrong by itself: an error that wanders, with a standard deviation and a time in which it forgets
/// itself, e(t) e(t') = σ² exp(−|t − t'|/τ); at other spots than the core another error, half in step with it.
/// </summary>
internal static class ErrorModel
{
    // Standard deviation in the core, K: it grows with what is above the air, for a cold heap is hardly to be got wrong.
    private const double Least = 1;
    private const double PerKelvin = 0.045;
    private const double Outside = 1.5; // times as much at other spots
    private const double Memory = 3; // d
    private const double InStep = 0.5;

    /// <summary>Covariance of the errors of readings: of the model, and from one reading to the next.</summary>
    /// <param name="readings">The readings.</param>
    /// <param name="factors">Shape [reading]: by how much the variance of each reading is raised.</param>
    /// <returns>Shape [reading, reading].</returns>
    public static double[,] Covariance(
        IReadOnlyList<DigestedReading> readings,
        IReadOnlyList<double> factors
    )
    {
        var n = readings.Count;
        var covariance = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < i; j++)
            {
                covariance[i, j] = covariance[j, i] = Together(readings[i], readings[j]);
            }

            covariance[i, i] =
                Together(readings[i], readings[i])
                + (readings[i].Deviation * readings[i].Deviation * factors[i]);
        }

        return covariance;
    }

    /// <summary>
    /// What the error of the core will be, given what is left between readings and the fit: its weights on what is left,
    /// and the standard deviation that remains.
    /// </summary>
    /// <param name="readings">The readings.</param>
    /// <param name="factors">Shape [reading]: by how much the variance of each reading is raised.</param>
    /// <param name="excess">When: days, and how far the core is then expected to be above the air, K.</param>
    /// <returns>Shape [day]: the weights, of shape [reading], and the standard deviation, K.</returns>
    public static (double[] Weights, double Deviation)[] Ahead(
        IReadOnlyList<DigestedReading> readings,
        IReadOnlyList<double> factors,
        IReadOnlyList<(double Day, double Excess)> excess
    )
    {
        var ahead = new (double[], double)[excess.Count];
        var factor = readings.Count > 0 ? Cholesky.Of(Covariance(readings, factors)) : null;
        for (var t = 0; t < ahead.Length; t++)
        {
            var at = new DigestedReading(
                excess[t].Day,
                0,
                0,
                Readings.ProbeSpot.Core,
                null,
                excess[t].Excess
            );
            var with = readings.Select(r => Together(at, r)).ToArray();
            double[] weights = [.. with];
            factor?.Solve(weights);
            var explained = weights.Zip(with, (a, b) => a * b).Sum();
            ahead[t] = (weights, Math.Sqrt(Math.Max(Together(at, at) - explained, 0)));
        }

        return ahead;
    }

    private static double Together(DigestedReading a, DigestedReading b)
    {
        if (a.Moisture || b.Moisture)
        {
            return 0;
        }

        var near = Math.Exp(-Math.Abs(a.Day - b.Day) / Memory);
        return Size(a) * Size(b) * near * (a.Spot == b.Spot ? 1 : InStep);
    }

    private static double Size(DigestedReading r) =>
        (Least + (PerKelvin * Math.Max(r.Excess, 0)))
        * (r.Spot == Readings.ProbeSpot.Core ? 1 : Outside);
}
