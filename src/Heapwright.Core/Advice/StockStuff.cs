using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Advice;

/// <summary>Something that could be added.</summary>
/// <param name="Ingredient">What, and how much of it there is.</param>
/// <param name="IsGreen">Whether it counts as green; as brown if not.</param>
public sealed record StockStuff(Ingredient Ingredient, bool IsGreen);
