namespace Heapwright.Numerics.Sampling;

/// <summary>
/// A small seeded stream of 64-bit numbers (SplitMix64): the only source of randomness in the project, always given
/// a seed, the same on every machine.
/// </summary>
/// <remarks>Source: Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators" (from memory).</remarks>
public struct SplitMix64(ulong seed)
{
    private ulong state = seed;

    /// <summary>The next number, uniform over all 64-bit values.</summary>
    public ulong Next()
    {
        state += 0x9E3779B97F4A7C15UL;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    /// <summary>The next number, uniform on [0, 1) with 53 random bits.</summary>
    public double NextUnit() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>The next whole number, uniform on [0, <paramref name="bound"/>).</summary>
    /// <param name="bound">A positive bound; the tiny bias of the multiply-shift method (below 2⁻³²) is accepted.</param>
    public int NextBelow(int bound)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(bound);
        return (int)(((Next() >> 32) * (ulong)bound) >> 32);
    }

    /// <summary>Mixes a seed with a key into a new seed, so that every named stream is independent of the others.</summary>
    /// <param name="seed">The seed of the whole question.</param>
    /// <param name="key">Any text that names the stream; compared by its UTF-16 code units.</param>
    public static ulong SeedFor(ulong seed, string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        // FNV-1a over the code units, then one scramble: stable across runs, unlike string.GetHashCode.
        var hash = 14695981039346656037UL;
        foreach (var unit in key)
        {
            hash = (hash ^ unit) * 1099511628211UL;
        }

        return new SplitMix64(seed ^ hash).Next();
    }
}
