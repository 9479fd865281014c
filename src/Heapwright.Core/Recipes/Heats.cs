namespace Heapwright.Core.Recipes;

/// <summary>Whether a heap will heat.</summary>
public enum Heats
{
    /// <summary>Unlikely.</summary>
    No,

    /// <summary>Warm, perhaps hot for a short time.</summary>
    Modest,

    /// <summary>Likely above 55 °C.</summary>
    Yes,
}
