using Heapwright.Core.Quantities;

namespace Heapwright.Core.Materials.Measurements;

/// <summary>Bayes' rule for one property.</summary>
public static class Posterior
{
    private const int Points = 400;
    private const double Reach = 60;

    // Beyond a drop of 20 in the logarithm a point weighs less than 1e-8 of the peak.
    private const double Drop = 20;

    /// <summary>What is known of a property after some measurements: prior times likelihoods, its percentiles taken again.</summary>
    /// <param name="prior">What was known before; an exact value stays as it is.</param>
    /// <param name="scale">The scale on which it is normal in two pieces.</param>
    /// <param name="logLikelihoods">The logarithm of each likelihood by value, each with a single peak.</param>
    /// <remarks>
    /// The density is taken at 400 points of the scale, spread over where it matters, however narrow that is; the order
    /// of the measurements does not matter at all.
    /// </remarks>
    public static Spread Of(
        Spread prior,
        SpreadScale scale,
        IReadOnlyList<Func<double, double>> logLikelihoods
    )
    {
        ArgumentNullException.ThrowIfNull(logLikelihoods);
        if (prior.IsExact || logLikelihoods.Count == 0)
        {
            return prior;
        }

        double Log(double z)
        {
            var value = prior.AtScore(z, scale);
            var sum = -0.5 * z * z;
            foreach (var likelihood in logLikelihoods)
            {
                sum += likelihood(value);
            }

            return double.IsNaN(sum) ? double.NegativeInfinity : sum;
        }

        var (peak, height) = Peak(Log);
        var from = Edge(Log, peak, height - Drop, -1);
        var to = Edge(Log, peak, height - Drop, 1);
        var width = (to - from) / Points;
        var mass = new double[Points];
        for (var i = 0; i < Points; i++)
        {
            mass[i] = Math.Exp(Log(from + ((i + 0.5) * width)) - height);
        }

        double At(double share)
        {
            var target = share * mass.Sum();
            var below = 0.0;
            for (var i = 0; i < Points; i++)
            {
                if (below + mass[i] >= target)
                {
                    return from + ((i + ((target - below) / mass[i])) * width);
                }

                below += mass[i];
            }

            return to;
        }

        return Spread.Of(
            prior.AtScore(At(0.05), scale),
            prior.AtScore(At(0.5), scale),
            prior.AtScore(At(0.95), scale)
        );
    }

    // Closes in on the peak by a factor of 100 a round, as exact as the numbers allow.
    private static (double Place, double Height) Peak(Func<double, double> log)
    {
        const int Steps = 200;
        var middle = 0.0;
        var reach = Reach;
        for (var round = 0; round < 7; round++)
        {
            var step = reach / Steps;
            var best = middle;
            var height = double.NegativeInfinity;
            for (var i = -Steps; i <= Steps; i++)
            {
                var z = middle + (i * step);
                var here = log(z);
                if (here > height)
                {
                    (best, height) = (z, here);
                }
            }

            middle = best;
            reach = 2 * step;
        }

        return (middle, log(middle));
    }

    private static double Edge(Func<double, double> log, double peak, double level, int side)
    {
        var step = 1e-12;
        while (step < 2 * Reach && log(peak + (side * step)) > level)
        {
            step *= 2;
        }

        var (inside, outside) = (step / 2, step);
        for (var i = 0; i < 50; i++)
        {
            var middle = (inside + outside) / 2;
            if (log(peak + (side * middle)) > level)
            {
                inside = middle;
            }
            else
            {
                outside = middle;
            }
        }

        return peak + (side * outside);
    }
}
