using System.Collections.Immutable;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Mixtures;

/// <summary>What is mixed, and with how much water.</summary>
public sealed record MixtureQuestion
{
    /// <summary>The number of sample points of a question in which anything is uncertain.</summary>
    public const int Points = 1024;

    /// <summary>The ingredients; at least one with an amount above 0.</summary>
    public required ImmutableArray<Ingredient> Ingredients { get; init; }

    /// <summary>Litres of water added.</summary>
    public Spread Water { get; init; } = Spread.Exact(0);

    /// <summary>Filled volume over loose sum where the asker gave it; null for the usual assumption.</summary>
    public Spread? MixingVolumeFactor { get; init; }

    /// <summary>How many sample points are drawn where anything is uncertain; a power of two.</summary>
    public int PointCount { get; init; } = Points;

    /// <summary>The seed of the sample set.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Whether everything asked is exact, so that one case says all.</summary>
    public bool IsExact =>
        Water.IsExact
        && MixingVolumeFactor is null or { IsExact: true }
        && Ingredients.All(i =>
            i.Amount.IsExact
            && i.Unit.Size.IsExact
            && (i.Ratio?.IsExact ?? true)
            && Materials.PropertyFacts.All.All(p => i.Properties[p]?.IsExact ?? true)
        );

    /// <summary>Whether more than one stuff is mixed, so that fines can fall between the coarse; nothing of one is none.</summary>
    public bool IsMixed =>
        Ingredients
            .Where(i => i.Amount.High > 0)
            .Select(i => i.Key)
            .Distinct(StringComparer.Ordinal)
            .Skip(1)
            .Any();
}
