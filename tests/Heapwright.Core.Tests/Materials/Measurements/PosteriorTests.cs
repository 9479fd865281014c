using CsCheck;
using Heapwright.Core.Materials.Measurements;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Tests.Materials.Measurements;

public class PosteriorTests
{
    private static readonly Spread Density = Spread.Of(50, 80, 128);

    [Fact]
    public void Posterior_TinyError_StandsAtTheMeasurement()
    {
        var after = Posterior.Of(Density, SpreadScale.Positive, [Log(95, 1e-6)]);
        Assert.InRange(after.Low, 94.999, 95.001);
        Assert.InRange(after.Typical, 94.9999, 95.0001);
        Assert.InRange(after.High, 94.999, 95.001);
    }

    [Fact]
    public void Posterior_TinyErrorFarFromThePrior_StandsAtTheMeasurement()
    {
        var after = Posterior.Of(Density, SpreadScale.Positive, [Log(900, 1e-5)]);
        Assert.InRange(after.Typical, 899.9, 900.1);
    }

    [Fact]
    public void Posterior_HugeError_LeavesThePriorAsItWas()
    {
        var after = Posterior.Of(Density, SpreadScale.Positive, [Log(300, 1e6)]);
        Assert.InRange(after.Low, 49.99, 50.01);
        Assert.InRange(after.Typical, 79.99, 80.01);
        Assert.InRange(after.High, 127.97, 128.03);
    }

    // Normal prior and normal error on the same scale: the precisions add. 50, 80, 128 is symmetric on the logarithmic
    // scale with a standard deviation of ln(1.6)/1.644854 = 0.285741; with an error of the same size the mean is half
    // way, at the root of 80 x 120 = 97.97959, and the ends are at exp(±ln(1.6)/√2) = 1.394208 times it.
    [Fact]
    public void Posterior_EqualErrors_MeetHalfWay()
    {
        var after = Posterior.Of(Density, SpreadScale.Positive, [Log(120, 0.285741)]);
        Assert.InRange(after.Typical, 97.97, 97.99);
        Assert.InRange(after.Low, 70.26, 70.30);
        Assert.InRange(after.High, 136.57, 136.64);
    }

    [Fact]
    public void Posterior_OrderOfTwo_DoesNotMatter() =>
        Gen.Select(
                Gen.Double[60, 120],
                Gen.Double[0.02, 1],
                Gen.Double[60, 120],
                Gen.Double[0.02, 1]
            )
            .Sample(
                (a, sa, b, sb) =>
                {
                    var ab = Posterior.Of(Density, SpreadScale.Positive, [Log(a, sa), Log(b, sb)]);
                    var ba = Posterior.Of(Density, SpreadScale.Positive, [Log(b, sb), Log(a, sa)]);
                    // Only the rounding of the sums differs.
                    Assert.Equal(ab.Low, ba.Low, 1e-6 * ab.Low);
                    Assert.Equal(ab.Typical, ba.Typical, 1e-6 * ab.Typical);
                    Assert.Equal(ab.High, ba.High, 1e-6 * ab.High);
                },
                iter: 50
            );

    [Fact]
    public void Posterior_OneAfterTheOther_IsBothAtOnce()
    {
        var both = Posterior.Of(Density, SpreadScale.Positive, [Log(70, 0.2), Log(110, 0.3)]);
        var first = Posterior.Of(Density, SpreadScale.Positive, [Log(70, 0.2)]);
        var second = Posterior.Of(first, SpreadScale.Positive, [Log(110, 0.3)]);
        // Within the grid: 400 points over about 13 standard deviations.
        Assert.Equal(both.Low, second.Low, 0.002 * both.Low);
        Assert.Equal(both.Typical, second.Typical, 0.002 * both.Typical);
        Assert.Equal(both.High, second.High, 0.002 * both.High);
    }

    [Fact]
    public void Posterior_AMeasurement_NeverWidens() =>
        Gen.Select(Gen.Double[60, 110], Gen.Double[0.01, 3])
            .Sample(
                (value, error) =>
                {
                    var after = Posterior.Of(Density, SpreadScale.Positive, [Log(value, error)]);
                    Assert.True(after.High / after.Low <= 128.0 / 50 * 1.001);
                },
                iter: 100
            );

    [Fact]
    public void Posterior_ExactPrior_StaysToTheBit() =>
        Assert.Equal(
            Spread.Exact(80),
            Posterior.Of(Spread.Exact(80), SpreadScale.Positive, [Log(100, 0.1)])
        );

    [Fact]
    public void Posterior_NoMeasurement_IsThePrior() =>
        Assert.Equal(Density, Posterior.Of(Density, SpreadScale.Positive, []));

    [Fact]
    public void Posterior_PriorTouchingItsBound_StaysWithinIt()
    {
        var after = Posterior.Of(
            Spread.Of(0, 5, 20),
            SpreadScale.Percent,
            [x => -0.5 * Math.Pow((x - 2) / 3, 2)]
        );
        Assert.InRange(after.Low, 0, after.Typical);
        Assert.InRange(after.High, after.Typical, 20);
    }

    private static Func<double, double> Log(double value, double error) =>
        x => -0.5 * Math.Pow(Math.Log(x / value) / error, 2);
}
