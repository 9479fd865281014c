using Heapwright.Numerics.Sampling;

namespace Heapwright.Numerics.Assimilation;

/// <summary>
/// One pass of the ensemble smoother with multiple data assimilation (ES-MDA): every unknown of every member is moved
/// by how it goes together, over the ensemble, with what was predicted of the observations.
/// </summary>
/// <remarks>
/// Source: Emerick and Reynolds 2013, "Ensemble smoother with multiple data assimilation", Computers and Geosciences
/// 55:3-15 (from memory): x ← x + C_xy (C_yy + α R)⁻¹ (d + √α ε − y), ε of covariance R, with Σ 1/α = 1 over the
/// passes. For a linear model and a normal prior the passes together give the exact posterior as the ensemble grows
/// (tested against the closed form).
/// </remarks>
public static class EnsembleSmoother
{
    // A correlation below this many of its standard errors by chance moves nothing.
    private const double ByChance = 2;

    /// <summary>Moves the members of an ensemble towards the observations.</summary>
    /// <param name="unknowns">Shape [unknown][member]; changed in place.</param>
    /// <param name="predicted">Shape [observation][member]: what each member says of each observation.</param>
    /// <param name="observed">Shape [observation].</param>
    /// <param name="covariance">
    /// Shape [observation, observation]: α R, the covariance of the errors of observations and model, already times the
    /// inflation of this pass.
    /// </param>
    /// <param name="stream">Draws the errors.</param>
    /// <param name="taper">Whether correlations that may be by chance are shrunk.</param>
    /// <exception cref="ArgumentException">The shapes do not fit.</exception>
    /// <exception cref="ArithmeticException">The covariance is not positive definite.</exception>
    public static void Update(
        double[][] unknowns,
        double[][] predicted,
        double[] observed,
        double[,] covariance,
        ref SplitMix64 stream,
        bool taper = true
    )
    {
        ArgumentNullException.ThrowIfNull(unknowns);
        ArgumentNullException.ThrowIfNull(predicted);
        ArgumentNullException.ThrowIfNull(observed);
        ArgumentNullException.ThrowIfNull(covariance);
        var m = observed.Length;
        if (predicted.Length != m || covariance.GetLength(0) != m)
        {
            throw new ArgumentException("one prediction per observation", nameof(predicted));
        }

        if (m == 0 || unknowns.Length == 0)
        {
            return;
        }

        var n = predicted[0].Length;
        var away = Array.ConvertAll(predicted, Centred);
        var spread = (double[,])covariance.Clone();
        for (var i = 0; i < m; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                spread[i, j] += Dot(away[i], away[j]) / (n - 1);
            }
        }

        var pull = Pull(predicted, observed, covariance, Cholesky.Of(spread), ref stream);
        var sizes = Array.ConvertAll(away, a => Math.Sqrt(Dot(a, a)));
        foreach (var unknown in unknowns)
        {
            var own = Centred(unknown);
            var size = Math.Sqrt(Dot(own, own));
            if (size <= 0)
            {
                continue;
            }

            for (var j = 0; j < m; j++)
            {
                if (sizes[j] <= 0)
                {
                    continue;
                }

                var together = Dot(own, away[j]);
                var correlation = together / (size * sizes[j]);
                var gain = together / (n - 1) * (taper ? Trusted(correlation, n) : 1);
                for (var i = 0; gain != 0 && i < n; i++)
                {
                    unknown[i] += gain * pull[j][i];
                }
            }
        }
    }

    // (C_yy + αR)⁻¹ (d + √α ε − y), shape [observation][member]; the drawn errors have mean 0 over the members.
    private static double[][] Pull(
        double[][] predicted,
        double[] observed,
        double[,] covariance,
        Cholesky spread,
        ref SplitMix64 stream
    )
    {
        var (m, n) = (observed.Length, predicted[0].Length);
        var errors = Cholesky.Of(covariance);
        var draws = new double[m][];
        for (var j = 0; j < m; j++)
        {
            draws[j] = new double[n];
            for (var i = 0; i < n; i++)
            {
                draws[j][i] = NormalDistribution.Quantile(
                    Math.Clamp(stream.NextUnit(), 1e-12, 1 - 1e-12)
                );
            }

            draws[j] = Centred(draws[j]);
        }

        var pull = new double[m][];
        for (var j = 0; j < m; j++)
        {
            pull[j] = new double[n];
        }

        var column = new double[m];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < m; j++)
            {
                column[j] = draws[j][i];
            }

            var error = errors.Times(column);
            for (var j = 0; j < m; j++)
            {
                column[j] = observed[j] + error[j] - predicted[j][i];
            }

            spread.Solve(column);
            for (var j = 0; j < m; j++)
            {
                pull[j][i] = column[j];
            }
        }

        return pull;
    }

    // How far a correlation seen in n members is to be believed, 0 to 1.
    private static double Trusted(double correlation, int n)
    {
        var chance = ByChance / Math.Sqrt(n);
        var size = Math.Abs(correlation);
        if (size <= chance)
        {
            return 0;
        }

        return 1 - (chance * chance / (size * size));
    }

    private static double[] Centred(double[] values)
    {
        var mean = 0.0;
        foreach (var v in values)
        {
            mean += v;
        }

        mean /= values.Length;
        return Array.ConvertAll(values, v => v - mean);
    }

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
