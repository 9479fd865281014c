namespace Heapwright.Numerics.Sampling;

/// <summary>
/// One set of quasi-random points for one question: within a block of at most <see cref="BlockSize"/> dimensions the
/// points form a shifted rank-1 lattice, and between blocks the order of the points is permuted at random (Latin
/// supercube sampling). Every single dimension is therefore stratified exactly, each of the n strata being hit once.
/// </summary>
/// <remarks>
/// Blocks are named by a key and depend on nothing but seed and key, so the answer to a question does not depend on
/// the order in which its parts were listed. Sources: rank-1 lattices and component-by-component construction: Sloan
/// and Reztsov 2002; Latin supercube sampling: Owen 1998 (both from memory). The generating vector was constructed
/// for n = 1024 with product weights 0.9^j; a test constructs it again.
/// </remarks>
public sealed class QuasiRandomSet
{
    /// <summary>The number of dimensions in a block.</summary>
    public const int BlockSize = 16;

    private static readonly int[] GeneratingVector =
    [
        1,
        275,
        167,
        71,
        245,
        289,
        87,
        307,
        481,
        323,
        149,
        385,
        465,
        165,
        449,
        55,
    ];

    private readonly ulong seed;

    /// <summary>Prepares a set of <paramref name="count"/> points.</summary>
    /// <param name="count">The number of points: a power of two from 1 to 65,536.</param>
    /// <param name="seed">The seed; the same seed gives the same points on every machine.</param>
    /// <exception cref="ArgumentOutOfRangeException">The count is not a power of two in that range.</exception>
    public QuasiRandomSet(int count, ulong seed)
    {
        if (count is < 1 or > 65536 || (count & (count - 1)) != 0)
        {
            throw new ArgumentOutOfRangeException(
                nameof(count),
                count,
                "a power of two from 1 to 65,536 is needed"
            );
        }

        Count = count;
        this.seed = seed;
    }

    /// <summary>The number of points.</summary>
    public int Count { get; }

    /// <summary>The block of dimensions with this name.</summary>
    /// <param name="key">The name; the same name always gives the same block.</param>
    public QuasiRandomBlock Block(string key)
    {
        var stream = new SplitMix64(SplitMix64.SeedFor(seed, key));
        var order = new int[Count];
        for (var i = 0; i < Count; i++)
        {
            order[i] = i;
        }

        for (var i = Count - 1; i > 0; i--)
        {
            var j = stream.NextBelow(i + 1);
            (order[i], order[j]) = (order[j], order[i]);
        }

        var shifts = new double[BlockSize];
        for (var d = 0; d < BlockSize; d++)
        {
            shifts[d] = stream.NextUnit();
        }

        return new QuasiRandomBlock(order, shifts);
    }

    /// <summary>The lattice multiplier of a dimension.</summary>
    internal static int Multiplier(int dimension) => GeneratingVector[dimension];
}
