using Heapwright.Numerics.Assimilation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Numerics.Tests.Assimilation;

/// <summary>Against the closed form: a linear model, a normal prior and normal errors.</summary>
public class EnsembleSmootherTests
{
    private const int Members = 20_000;

    // x, y standard normal; observed: x + y with variance 0.5 is 2, and x − y/2 with variance 1 is 0.5.
    // Precision I + Hᵀ R⁻¹ H = [[4, 1.5], [1.5, 3.25]], its inverse times Hᵀ R⁻¹ d = (4.5, 3.75): worked by hand.
    private const double Determinant = (4 * 3.25) - (1.5 * 1.5);
    private const double MeanX = ((3.25 * 4.5) - (1.5 * 3.75)) / Determinant;
    private const double MeanY = ((4 * 3.75) - (1.5 * 4.5)) / Determinant;
    private const double VarianceX = 3.25 / Determinant;
    private const double VarianceY = 4 / Determinant;
    private const double Covariance = -1.5 / Determinant;

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    public void Update_LinearModel_GivesTheClosedForm(int passes)
    {
        var unknowns = Prior();
        var stream = new SplitMix64(7);
        for (var pass = 0; pass < passes; pass++)
        {
            EnsembleSmoother.Update(
                unknowns,
                Predict(unknowns),
                [2, 0.5],
                new double[,]
                {
                    { 0.5 * passes, 0 },
                    { 0, 1.0 * passes },
                },
                ref stream,
                taper: false
            );
        }

        // Four standard errors of a sample of this size.
        Assert.Equal(MeanX, unknowns[0].Average(), 4 * Math.Sqrt(VarianceX / Members));
        Assert.Equal(MeanY, unknowns[1].Average(), 4 * Math.Sqrt(VarianceY / Members));
        Assert.Equal(VarianceX, Together(unknowns[0], unknowns[0]), 0.04 * VarianceX);
        Assert.Equal(VarianceY, Together(unknowns[1], unknowns[1]), 0.04 * VarianceY);
        Assert.Equal(Covariance, Together(unknowns[0], unknowns[1]), 0.01);
    }

    [Fact]
    public void Update_UnknownThatDoesNotMatter_IsLeftByTheTaper()
    {
        double[][] unknowns = [.. Prior().Select(row => row[..200])];
        var untouched = Draw(99, 200);
        double[][] all = [.. unknowns, [.. untouched]];
        var stream = new SplitMix64(7);

        EnsembleSmoother.Update(
            all,
            [
                [.. unknowns[0].Zip(unknowns[1], (a, b) => a + b)],
            ],
            [2],
            new double[,]
            {
                { 0.5 },
            },
            ref stream
        );

        // By chance the correlation with 200 members is 0.07 at one standard error; two are not believed.
        Assert.Equal(untouched, all[2]);
        Assert.True(all[0].Average() > 0.5);
    }

    [Fact]
    public void Update_SameStream_GivesTheSameBits()
    {
        double[] Once()
        {
            var unknowns = Prior();
            var stream = new SplitMix64(3);
            EnsembleSmoother.Update(
                unknowns,
                Predict(unknowns),
                [2, 0.5],
                new double[,]
                {
                    { 0.5, 0.1 },
                    { 0.1, 1 },
                },
                ref stream
            );
            return unknowns[0];
        }

        Assert.Equal(Once(), Once());
    }

    [Fact]
    public void Update_MissingPrediction_IsRefused()
    {
        var stream = new SplitMix64(3);
        Assert.Throws<ArgumentException>(() =>
            EnsembleSmoother.Update(Prior(), [], [1], new double[1, 1], ref stream)
        );
    }

    private static double[][] Prior() => [Draw(1, Members), Draw(2, Members)];

    private static double[] Draw(ulong seed, int count)
    {
        var stream = new SplitMix64(seed);
        var values = new double[count];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = NormalDistribution.Quantile(
                Math.Clamp(stream.NextUnit(), 1e-12, 1 - 1e-12)
            );
        }

        return values;
    }

    private static double[][] Predict(double[][] unknowns) =>
        [
            [.. unknowns[0].Zip(unknowns[1], (a, b) => a + b)],
            [.. unknowns[0].Zip(unknowns[1], (a, b) => a - (b / 2))],
        ];

    private static double Together(double[] a, double[] b)
    {
        var (x, y) = (a.Average(), b.Average());
        return a.Zip(b, (p, q) => (p - x) * (q - y)).Average();
    }
}
