using System.Collections.Immutable;

namespace Heapwright.Core.Materials.Guessing;

/// <summary>The materials of a library that unknown stuff may be like, with their weights.</summary>
internal static class Pool
{
    // In families: what the kind in other states counts for, and what other kinds in the same state count for, beside
    // each family that fits both. Both keep a cell with two families in it from looking better known than it is.
    private const double SameKind = 1;
    private const double SameFreshness = 0.2;

    /// <summary>The materials with their weights, which sum to 1; families count alike, however many rows they have.</summary>
    /// <param name="library">The library.</param>
    /// <param name="kind">The kind seen.</param>
    /// <param name="freshness">The freshness seen.</param>
    /// <exception cref="ArgumentException">The library holds no material.</exception>
    public static ImmutableArray<(Material Material, double Weight)> Of(
        MaterialLibrary library,
        string kind,
        string freshness
    )
    {
        if (library.All.IsEmpty)
        {
            throw new ArgumentException("the library holds no material", nameof(library));
        }

        var parts = library.All.ToLookup(m => (Same(m.Kind, kind), Same(m.Freshness, freshness)));
        var pool = new List<(Material, double)>();
        var both = ByFamily(parts[(true, true)]);
        Add(pool, both, both.Count);
        Add(pool, ByFamily(parts[(true, false)]), SameKind);
        Add(pool, ByFamily(parts[(false, true)]), SameFreshness);
        if (pool.Count == 0)
        {
            Add(pool, ByFamily(library.All), 1);
        }

        var sum = pool.Sum(p => p.Item2);
        return [.. pool.Select(p => (p.Item1, p.Item2 / sum))];
    }

    private static List<IGrouping<string, Material>> ByFamily(IEnumerable<Material> materials) =>
        [.. materials.GroupBy(m => m.Family, StringComparer.Ordinal)];

    private static void Add(
        List<(Material, double)> pool,
        List<IGrouping<string, Material>> families,
        double total
    )
    {
        foreach (var family in families)
        {
            var each = total / families.Count / family.Count();
            pool.AddRange(family.Select(m => (m, each)));
        }
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.Ordinal);
}
