namespace Heapwright.Core.Recipes;

/// <summary>What the asker wants most of a recipe.</summary>
public enum RecipeAim
{
    /// <summary>Use up as much as possible of what is there.</summary>
    UseMost,

    /// <summary>Spend as little as possible.</summary>
    LeastCost,

    /// <summary>As big and hot a heap as can be, so that all of it goes through heat.</summary>
    AllThroughHeat,

    /// <summary>As little to carry, chop and turn as possible.</summary>
    LeastWork,
}
