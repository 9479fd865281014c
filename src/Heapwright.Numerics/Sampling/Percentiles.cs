namespace Heapwright.Numerics.Sampling;

/// <summary>Percentiles of a sample.</summary>
public static class Percentiles
{
    /// <summary>
    /// The 5th, 50th and 95th percentile; the k-th smallest of n values stands at (k − ½)/n, with straight lines
    /// between (Hazen's plotting position).
    /// </summary>
    /// <param name="sample">Shape [point]: at least one value, none NaN.</param>
    /// <returns>The three percentiles, in the unit of the sample; equal to the bit when all values are equal.</returns>
    /// <exception cref="ArgumentException">The sample is empty.</exception>
    public static (double P05, double P50, double P95) Of(ReadOnlySpan<double> sample)
    {
        if (sample.IsEmpty)
        {
            throw new ArgumentException("at least one value is needed", nameof(sample));
        }

        var sorted = sample.ToArray();
        Array.Sort(sorted);
        return (At(sorted, 0.05), At(sorted, 0.50), At(sorted, 0.95));
    }

    /// <summary>One percentile of a sorted sample, by the same rule as <see cref="Of"/>.</summary>
    /// <param name="sorted">Shape [point]: ascending.</param>
    /// <param name="share">The share below, 0 to 1.</param>
    public static double At(ReadOnlySpan<double> sorted, double share)
    {
        var position = Math.Clamp((share * sorted.Length) - 0.5, 0, sorted.Length - 1);
        var below = (int)position;
        var above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + ((position - below) * (sorted[above] - sorted[below]));
    }
}
