using CsCheck;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Numerics.Tests.Sampling;

public class PercentilesTests
{
    /// <summary>Hazen (1914), from memory: of 1 to 10 the median is 5.5, the ends of the middle 90 % are 1 and 10.</summary>
    [Fact]
    public void Percentiles_OfTenValuesInAnyOrder_AreHazens()
    {
        var (low, middle, high) = Percentiles.Of([7, 1, 10, 4, 2, 9, 3, 8, 6, 5]);

        Assert.Equal(1, low, 12);
        Assert.Equal(5.5, middle, 12);
        Assert.Equal(10, high, 12);
    }

    /// <summary>The sort is our own: it must put every sample in the order that the runtime's does.</summary>
    [Fact]
    public void Percentiles_AnySample_AreThoseOfTheSampleSortedByTheRuntime() =>
        Gen.Double[-1e6, 1e6]
            .Array[1, 3000]
            .Sample(
                values =>
                {
                    var sorted = (double[])values.Clone();
                    Array.Sort(sorted);
                    var (low, middle, high) = Percentiles.Of(values);
                    Assert.Equal(Percentiles.At(sorted, 0.05), low);
                    Assert.Equal(Percentiles.At(sorted, 0.5), middle);
                    Assert.Equal(Percentiles.At(sorted, 0.95), high);
                },
                iter: 300
            );

    [Fact]
    public void Percentiles_OfManyEqualValues_AreThatValue() =>
        Assert.Equal((0.1, 0.1, 0.1), Percentiles.Of([.. Enumerable.Repeat(0.1, 1000)]));

    [Fact]
    public void Percentiles_OfNothing_AreRefused() =>
        Assert.Throws<ArgumentException>(() => Percentiles.Of([]));
}
