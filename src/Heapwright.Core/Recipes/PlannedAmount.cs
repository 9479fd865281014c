using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Recipes;

/// <summary>How much of an item a plan uses.</summary>
/// <param name="Item">The item.</param>
/// <param name="Amount">In the item's unit.</param>
/// <param name="Matter">What that holds at the typical values.</param>
public sealed record PlannedAmount(RecipeItem Item, double Amount, MassBalance Matter);
