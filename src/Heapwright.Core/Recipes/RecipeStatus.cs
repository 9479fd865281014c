namespace Heapwright.Core.Recipes;

/// <summary>Whether a recipe was found.</summary>
public enum RecipeStatus
{
    /// <summary>It can be built.</summary>
    Ok,

    /// <summary>The nearest plan misses something; what and how much is said.</summary>
    FallsShort,

    /// <summary>There is nothing to build with.</summary>
    Cannot,
}
