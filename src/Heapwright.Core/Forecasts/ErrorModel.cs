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

    /// <summary>The time in which the error that wanders forgets itself, d.</summary>
    public const double Memory = 3;

    /// <summary>How far the errors of two spots go together.</summary>
    public const double InStep = 0.5;

    // What a heap is other than its model for good: its memory, and the sizes that are tried, K.
    private const double LastingMemory = 30; // d
    private const double LastingFrom = 40; // K above the air: in full from here on

    /// <summary>How large the error that lasts usually is, K: larger ones are less likely by e each so many.</summary>
    public const double LastingUsual = 1.5;

    private static readonly double[] LastingTried = [0, 2, 4, 7, 11, 16];

    /// <summary>Covariance of the errors of readings: of the model, and from one reading to the next.</summary>
    /// <param name="readings">The readings.</param>
    /// <param name="factors">Shape [reading]: by how much the variance of each reading is raised.</param>
    /// <param name="lasting">Standard deviation of the error that lasts, K.</param>
    /// <returns>Shape [reading, reading].</returns>
    public static double[,] Covariance(
        IReadOnlyList<DigestedReading> readings,
        IReadOnlyList<double> factors,
        double lasting = 0
    )
    {
        var n = readings.Count;
        var covariance = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < i; j++)
            {
                covariance[i, j] = covariance[j, i] = Together(readings[i], readings[j], lasting);
            }

            covariance[i, i] =
                Together(readings[i], readings[i], lasting)
                + (readings[i].Deviation * readings[i].Deviation * factors[i]);
        }

        return covariance;
    }

    /// <summary>
    /// How large the error is that lasts: the size, of a few, under which what is left between readings and each member is
    /// on average most likely, each weighed by how usual it is. Most heaps have none.
    /// </summary>
    /// <param name="readings">The readings.</param>
    /// <param name="factors">Shape [reading]: by how much the variance of each reading is raised.</param>
    /// <param name="predicted">Shape [reading][member]: what the members say of them.</param>
    /// <returns>Its standard deviation, K.</returns>
    public static double Lasting(
        IReadOnlyList<DigestedReading> readings,
        IReadOnlyList<double> factors,
        double[][] predicted
    )
    {
        if (readings.Count < 2)
        {
            return 0;
        }

        var n = predicted[0].Length;
        var left = new double[readings.Count];
        return LastingTried.MaxBy(lasting =>
        {
            var factor = Cholesky.Of(Covariance(readings, factors, lasting));
            var squares = 0.0;
            for (var i = 0; i < n; i++)
            {
                for (var r = 0; r < left.Length; r++)
                {
                    left[r] = readings[r].Value - predicted[r][i];
                }

                factor.Whiten(left);
                foreach (var x in left)
                {
                    squares += x * x / n;
                }
            }

            return (-0.5 * (factor.LogDeterminant + squares)) - (lasting / LastingUsual);
        });
    }

    private static double Together(DigestedReading a, DigestedReading b, double lasting)
    {
        if (a.Moisture || b.Moisture)
        {
            return 0;
        }

        var apart = Math.Abs(a.Day - b.Day);
        return (
                (Size(a) * Size(b) * Math.Exp(-apart / Memory))
                + (
                    lasting
                    * lasting
                    * Math.Min(Warm(a), Warm(b))
                    * Math.Exp(-apart / LastingMemory)
                )
            ) * (a.Spot == b.Spot ? 1 : InStep);
    }

    /// <summary>In what share the error that lasts is there: a heap near the air's temperature has none of it.</summary>
    /// <param name="excess">How far the heap is above the air, K.</param>
    public static double Warm(double excess)
    {
        var share = Math.Clamp(excess / LastingFrom, 0, 1);
        return share * share;
    }

    /// <summary>Standard deviation of the error of the core that wanders, K.</summary>
    /// <param name="excess">How far the core is above the air, K.</param>
    public static double Size(double excess) => Least + (PerKelvin * Math.Max(excess, 0));

    private static double Warm(DigestedReading r) => Warm(r.Excess);

    /// <summary>Standard deviation of the error that wanders where and when a reading was taken, K.</summary>
    /// <param name="r">The reading.</param>
    public static double Size(DigestedReading r) =>
        Size(r.Excess) * (r.Spot == Readings.ProbeSpot.Core ? 1 : Outside);
}
