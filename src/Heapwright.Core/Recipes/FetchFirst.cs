using System.Collections.Immutable;
using Heapwright.Core.Materials;

namespace Heapwright.Core.Recipes;

/// <summary>What could be fetched to mend a shortfall, the likeliest at home and the cheapest first.</summary>
/// <param name="ByShortfall">Materials by what is missing: volume, nitrogen, carbon, dryness, air.</param>
public sealed record FetchFirst(ImmutableDictionary<string, ImmutableArray<Material>> ByShortfall)
{
    /// <summary>Nothing to suggest.</summary>
    public static FetchFirst Nothing { get; } =
        new(ImmutableDictionary<string, ImmutableArray<Material>>.Empty);

    /// <summary>The materials for a shortfall.</summary>
    /// <param name="what">What is missing.</param>
    public ImmutableArray<Material> For(string what) => ByShortfall.GetValueOrDefault(what, []);
}
