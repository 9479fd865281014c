namespace Heapwright.Numerics.Search;

/// <summary>The step in which an objective over whole amounts can change.</summary>
internal static class Granularity
{
    /// <summary>
    /// Largest g such that all coefficients of variables that can move are whole multiples of g (within 1e-9 of the largest
    /// coefficient), by Euclid's algorithm; 0 if there is none above a millionth of the largest. An improvement is then at least g.
    /// </summary>
    internal static double Of(
        ReadOnlySpan<double> c,
        ReadOnlySpan<double> lower,
        ReadOnlySpan<double> upper
    )
    {
        double largest = 0;
        for (int i = 0; i < c.Length; i++)
        {
            if (upper[i] > lower[i])
            {
                largest = Math.Max(largest, Math.Abs(c[i]));
            }
        }

        if (largest == 0)
        {
            return 0;
        }

        double g = 0;
        double zero = 1e-9 * largest;
        for (int i = 0; i < c.Length; i++)
        {
            if (upper[i] > lower[i])
            {
                g = Common(g, Math.Abs(c[i]), zero);
            }
        }

        return g > 1e-6 * largest && Fits(g, c, lower, upper) ? g : 0;
    }

    private static double Common(double a, double b, double zero)
    {
        while (b > zero)
        {
            double rest = a - (b * Math.Round(a / b));
            (a, b) = (b, Math.Abs(rest));
        }

        return a;
    }

    /// <summary>Errors of Euclid's algorithm add up; so the result is checked against every coefficient, over the whole range.</summary>
    private static bool Fits(
        double g,
        ReadOnlySpan<double> c,
        ReadOnlySpan<double> lower,
        ReadOnlySpan<double> upper
    )
    {
        double error = 0;
        for (int i = 0; i < c.Length; i++)
        {
            if (upper[i] > lower[i])
            {
                double steps = c[i] / g;
                error += Math.Abs(steps - Math.Round(steps)) * (upper[i] - lower[i]);
            }
        }

        return error < 1e-3;
    }
}
