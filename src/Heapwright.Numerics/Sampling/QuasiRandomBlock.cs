namespace Heapwright.Numerics.Sampling;

/// <summary>A named block of dimensions of a <see cref="QuasiRandomSet"/>.</summary>
public sealed class QuasiRandomBlock
{
    private readonly int[] order;
    private readonly double[] shifts;

    internal QuasiRandomBlock(int[] order, double[] shifts)
    {
        this.order = order;
        this.shifts = shifts;
    }

    /// <summary>Fills an array with the coordinates of all points in one dimension.</summary>
    /// <param name="dimension">The dimension, 0 to <see cref="QuasiRandomSet.BlockSize"/> − 1.</param>
    /// <param name="points">Shape [point]: receives values strictly inside (0, 1), one in each of n equal strata.</param>
    /// <exception cref="ArgumentOutOfRangeException">The dimension is outside the block.</exception>
    /// <exception cref="ArgumentException">The array has not the length of the set.</exception>
    public void Fill(int dimension, Span<double> points)
    {
        if (dimension is < 0 or >= QuasiRandomSet.BlockSize)
        {
            throw new ArgumentOutOfRangeException(
                nameof(dimension),
                dimension,
                "0 to 15 is allowed"
            );
        }

        var n = order.Length;
        if (points.Length != n)
        {
            throw new ArgumentException(
                $"holds {points.Length} values, {n} are needed",
                nameof(points)
            );
        }

        var z = (long)QuasiRandomSet.Multiplier(dimension);
        // The shift moves all points together inside their strata; 0.5/n keeps 0 and 1 out of reach.
        var within = (0.5 + ((shifts[dimension] - 0.5) * 0.98)) / n;
        var cell = (int)(shifts[dimension] * n);
        for (var i = 0; i < n; i++)
        {
            points[i] = ((double)(((order[i] * z) + cell) % n) / n) + within;
        }
    }
}
