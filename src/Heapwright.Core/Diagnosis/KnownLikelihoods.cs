namespace Heapwright.Core.Diagnosis;

/// <summary>
/// Likelihoods of a fact that were worked out, by what they depend on: open addressing in bare arrays, for a table of the
/// framework that holds numbers by numbers is compiled anew at every start of the program.
/// </summary>
internal sealed class KnownLikelihoods
{
    private const int Free = -1;

    private readonly int[] keys;
    private readonly ushort[] numbers;
    private readonly double[] values;
    private readonly int mask;
    private int count;

    /// <summary>An empty table.</summary>
    /// <param name="most">The most keys it will hold.</param>
    public KnownLikelihoods(int most)
    {
        var size = 16;
        while (size < 2 * most)
        {
            size *= 2;
        }

        (keys, numbers, values, mask) = (
            new int[size],
            new ushort[size],
            new double[most],
            size - 1
        );
        Clear();
    }

    /// <summary>Forgets all.</summary>
    public void Clear()
    {
        count = 0;
        for (var at = 0; at < keys.Length; at++)
        {
            keys[at] = Free;
        }
    }

    /// <summary>The number of the likelihood of a fact under a key, from 0; worked out where it is not known.</summary>
    /// <param name="key">The key of what it depends on, 0 or above.</param>
    /// <param name="fact">The fact.</param>
    /// <param name="holding">What holds there.</param>
    public int NumberOf(int key, SignFact fact, ReadOnlySpan<sbyte> holding)
    {
        var at = (int)((uint)key * 2654435769u >> 7) & mask;
        while (keys[at] != Free && keys[at] != key)
        {
            at = (at + 1) & mask;
        }

        if (keys[at] == Free)
        {
            values[count] = fact.Likelihood(holding);
            (keys[at], numbers[at]) = (key, (ushort)count);
            count++;
        }

        return numbers[at];
    }

    /// <summary>The likelihoods that are known, by their numbers.</summary>
    public double[] Values()
    {
        var all = new double[count];
        Array.Copy(values, all, count);
        return all;
    }
}
