using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Recipes;

/// <summary>Something a recipe may use: from what is there, or to be bought.</summary>
public sealed record RecipeItem
{
    /// <summary>What it is, in which unit; its amount is what there is, or the most that can be bought.</summary>
    public required Ingredient Ingredient { get; init; }

    /// <summary>Whether only whole units are used.</summary>
    public bool Whole { get; init; }

    /// <summary>Whether all of it must be used.</summary>
    public bool MustUse { get; init; }

    /// <summary>Days until it spoils; null if it keeps.</summary>
    public double? SpoilsInDays { get; init; }

    /// <summary>Whether it must be bought or fetched.</summary>
    public bool IsPurchase { get; init; }

    /// <summary>Price of one unit, in the asker's money; 0 for what is there.</summary>
    public double Price { get; init; }
}
