using Heapwright.Numerics.Sampling;

namespace Heapwright.Numerics.Tests.Sampling;

public class NormalCumulativeTests
{
    // Standard normal table values (common knowledge, no source). The method is good to 1e-14 absolute, and in the far tail
    // to one part in a hundred million.
    [Theory]
    [InlineData(0, 0.5, 1e-15)]
    [InlineData(1, 0.841344746068543, 1e-14)]
    [InlineData(-1, 0.158655253931457, 1e-14)]
    [InlineData(1.6448536269514722, 0.95, 1e-14)]
    [InlineData(-1.959963984540054, 0.025, 1e-14)]
    [InlineData(-3, 0.00134989803163009, 1e-16)]
    [InlineData(-6, 9.86587645037698e-10, 9.9e-18)]
    [InlineData(-8, 6.22096057427178e-16, 6.2e-24)]
    [InlineData(-40, 0, 0)]
    [InlineData(40, 1, 0)]
    [InlineData(double.NegativeInfinity, 0, 0)]
    [InlineData(double.PositiveInfinity, 1, 0)]
    public void Cumulative_TableValue_IsMet(double z, double share, double tolerance) =>
        Assert.InRange(NormalDistribution.Cumulative(z), share - tolerance, share + tolerance);

    [Fact]
    public void Cumulative_OfQuantile_IsTheShare()
    {
        for (var i = 1; i < 1000; i++)
        {
            var p = i / 1000.0;
            var back = NormalDistribution.Cumulative(NormalDistribution.Quantile(p));
            Assert.InRange(back, p - 1e-14, p + 1e-14);
        }
    }
}
