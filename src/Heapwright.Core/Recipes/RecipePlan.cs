using System.Collections.Immutable;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Recipes;

/// <summary>One way to build the heap.</summary>
public sealed record RecipePlan
{
    /// <summary>What is used of what is there.</summary>
    public required ImmutableArray<PlannedAmount> Use { get; init; }

    /// <summary>What is bought or fetched.</summary>
    public required ImmutableArray<PlannedAmount> Buy { get; init; }

    /// <summary>Litres of water, all while building.</summary>
    public required double Water { get; init; }

    /// <summary>The mixture that results, water and any standing heap included.</summary>
    public required Mixture Mixture { get; init; }

    /// <summary>The chances of being within the ranges.</summary>
    public required ChanceInBand Chance { get; init; }

    /// <summary>What the purchases cost, in the asker's money.</summary>
    public required double Cost { get; init; }

    /// <summary>What to expect.</summary>
    public required Expectation Expect { get; init; }

    /// <summary>Whether no better plan exists for the scenarios drawn, under the conditions kept.</summary>
    public required bool ProvenBest { get; init; }

    /// <summary>What it is good for, and what else is to be said.</summary>
    public ImmutableArray<Reason> Notes { get; init; } = [];
}
