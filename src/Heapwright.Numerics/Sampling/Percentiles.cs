namespace Heapwright.Numerics.Sampling;

/// <summary>Percentiles of a sample.</summary>
public static class Percentiles
{
    private static readonly int[] Gaps =
    [
        90927,
        40412,
        17961,
        7983,
        3548,
        1577,
        701,
        301,
        132,
        57,
        23,
        10,
        4,
        1,
    ];

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
        Sort(sorted);
        return (At(sorted, 0.05), At(sorted, 0.50), At(sorted, 0.95));
    }

    /// <summary>Sorts in place. Array.Sort of doubles is compiled anew at every start of the program; this is not.</summary>
    /// <remarks>Shell's sort with the gaps of Ciura (2001), continued by 2.25.</remarks>
    /// <param name="values">Shape [point]: none NaN; ascending afterwards.</param>
    internal static void Sort(Span<double> values)
    {
        foreach (var gap in Gaps)
        {
            for (var i = gap; i < values.Length; i++)
            {
                var value = values[i];
                var j = i;
                for (; j >= gap && values[j - gap] > value; j -= gap)
                {
                    values[j] = values[j - gap];
                }

                values[j] = value;
            }
        }
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
