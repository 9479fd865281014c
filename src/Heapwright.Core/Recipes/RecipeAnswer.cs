using System.Collections.Immutable;

namespace Heapwright.Core.Recipes;

/// <summary>The answer to a <see cref="RecipeQuestion"/>.</summary>
public sealed record RecipeAnswer
{
    /// <summary>Whether a recipe was found.</summary>
    public required RecipeStatus Status { get; init; }

    /// <summary>At most three plans, different in kind, best first; where none was found, the nearest.</summary>
    public ImmutableArray<RecipePlan> Plans { get; init; } = [];

    /// <summary>What is missing.</summary>
    public ImmutableArray<Shortfall> Shortfalls { get; init; } = [];

    /// <summary>Which single measurements would help most.</summary>
    public ImmutableArray<MeasureGain> MeasureNext { get; init; } = [];

    /// <summary>What the best plan leaves of what is there.</summary>
    public ImmutableArray<PlannedAmount> LeftOver { get; init; } = [];

    /// <summary>The ranges by which the plans were judged.</summary>
    public required Bands Bands { get; init; }
}
