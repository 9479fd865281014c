namespace Heapwright.Numerics.Sampling;

/// <summary>The standard normal distribution.</summary>
public static class NormalDistribution
{
    /// <summary>The 95th percentile of the standard normal distribution.</summary>
    public const double Z95 = 1.6448536269514722;

    /// <summary>
    /// The value below which a share <paramref name="p"/> of a standard normal variable lies; relative error below
    /// 1e-15 over (1e-300, 1 − 1e-16).
    /// </summary>
    /// <param name="p">A probability strictly between 0 and 1.</param>
    /// <returns>The quantile, dimensionless.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not strictly between 0 and 1.</exception>
    /// <remarks>Source: Wichura 1988, algorithm AS 241, PPND16, Applied Statistics 37:477-484 (coefficients from memory, checked against another library in the tests).</remarks>
    public static double Quantile(double p)
    {
        if (!(p > 0 && p < 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(p),
                p,
                "a probability strictly between 0 and 1 is needed"
            );
        }

        var q = p - 0.5;
        if (Math.Abs(q) <= 0.425)
        {
            var r = 0.180625 - (q * q);
            return q
                * Horner(
                    r,
                    2.5090809287301226727e3,
                    3.3430575583588128105e4,
                    6.7265770927008700853e4,
                    4.5921953931549871457e4,
                    1.3731693765509461125e4,
                    1.9715909503065514427e3,
                    1.3314166789178437745e2,
                    3.3871328727963666080
                )
                / Horner(
                    r,
                    5.2264952788528545610e3,
                    2.8729085735721942674e4,
                    3.9307895800092710610e4,
                    2.1213794301586595867e4,
                    5.3941960214247511077e3,
                    6.8718700749205790830e2,
                    4.2313330701600911252e1,
                    1.0
                );
        }

        var tail = Math.Sqrt(-Math.Log(q < 0 ? p : 1 - p));
        double x;
        if (tail <= 5)
        {
            var r = tail - 1.6;
            x =
                Horner(
                    r,
                    7.74545014278341407640e-4,
                    2.27238449892691845833e-2,
                    2.41780725177450611770e-1,
                    1.27045825245236838258,
                    3.64784832476320460504,
                    5.76949722146069140550,
                    4.63033784615654529590,
                    1.42343711074968357734
                )
                / Horner(
                    r,
                    1.05075007164441684324e-9,
                    5.47593808499534494600e-4,
                    1.51986665636164571966e-2,
                    1.48103976427480074590e-1,
                    6.89767334985100004550e-1,
                    1.67638483018380384940,
                    2.05319162663775882187,
                    1.0
                );
        }
        else
        {
            var r = tail - 5;
            x =
                Horner(
                    r,
                    2.01033439929228813265e-7,
                    2.71155556874348757815e-5,
                    1.24266094738807843860e-3,
                    2.65321895265761230930e-2,
                    2.96560571828504891230e-1,
                    1.78482653991729133580,
                    5.46378491116411436990,
                    6.65790464350110377720
                )
                / Horner(
                    r,
                    2.04426310338993978564e-15,
                    1.42151175831644588870e-7,
                    1.84631831751005468180e-5,
                    7.86869131145613259100e-4,
                    1.48753612908506148525e-2,
                    1.36929880922735805310e-1,
                    5.99832206555887937690e-1,
                    1.0
                );
        }

        return q < 0 ? -x : x;
    }

    /// <summary>The share of a standard normal variable below <paramref name="z"/>.</summary>
    /// <param name="z">Any number; beyond ±38 the answer is 0 or 1.</param>
    /// <returns>A probability, absolute error below 1e-14, relative error below 1e-8 down to z = −8.</returns>
    /// <remarks>
    /// Source: West 2005, "Better approximations to cumulative normal functions", Wilmott, after Hart 1968, algorithm
    /// 5666 (coefficients from memory, checked against printed values and against <see cref="Quantile"/> in the tests).
    /// </remarks>
    public static double Cumulative(double z)
    {
        var x = Math.Abs(z);
        if (x > 38)
        {
            return z > 0 ? 1 : 0;
        }

        var bell = Math.Exp(-x * x / 2);
        double tail;
        if (x < 7.07106781186547)
        {
            var top = Horner(
                x,
                0,
                3.52624965998911e-2,
                0.700383064443688,
                6.37396220353165,
                33.912866078383,
                112.079291497871,
                221.213596169931,
                220.206867912376
            );
            var bottom = Horner(
                x,
                8.83883476483184e-2,
                1.75566716318264,
                16.064177579207,
                86.7807322029461,
                296.564248779674,
                637.333633378831,
                793.826512519948,
                440.413735824752
            );
            tail = bell * top / bottom;
        }
        else
        {
            var fraction = x + (1 / (x + (2 / (x + (3 / (x + (4 / (x + 0.65))))))));
            tail = bell / (fraction * 2.506628274631);
        }

        return z > 0 ? 1 - tail : tail;
    }

    private static double Horner(
        double r,
        double c7,
        double c6,
        double c5,
        double c4,
        double c3,
        double c2,
        double c1,
        double c0
    ) =>
        (((((((((((((c7 * r) + c6) * r) + c5) * r) + c4) * r) + c3) * r) + c2) * r) + c1) * r) + c0;
}
