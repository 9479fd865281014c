using System.Collections.Immutable;
using Heapwright.Core.Bins;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>What is to be built, and in what.</summary>
public sealed record BuildQuestion
{
    /// <summary>The ingredients; at least one with an amount above 0, each with a known density. Typical amounts count.</summary>
    public required ImmutableArray<Ingredient> Ingredients { get; init; }

    /// <summary>The water to add in all; null for as much as brings the dry stuff to the aim.</summary>
    public Volume? Water { get; init; }

    /// <summary>What holds the heap; null for a square floor that suits the volume.</summary>
    public Bin? Bin { get; init; }

    /// <summary>Filled volume over loose sum where the asker gave it; null for the usual assumption.</summary>
    public Spread? MixingVolumeFactor { get; init; }

    /// <summary>The seed of the sample set of the mixture.</summary>
    public ulong Seed { get; init; } = 1;
}
