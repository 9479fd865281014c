using Heapwright.Core.Mixtures;

namespace Heapwright.App.Batches;

/// <summary>A material that went into a batch.</summary>
/// <param name="Ingredient">The material with its amount.</param>
/// <param name="LooseLitres">Its loose volume, litres, typically.</param>
/// <param name="Kilograms">Its wet mass, kg, typically.</param>
public sealed record BatchPart(Ingredient Ingredient, double LooseLitres, double Kilograms);
