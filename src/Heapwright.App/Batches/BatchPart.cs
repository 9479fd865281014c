using Heapwright.Core.Mixtures;
using Heapwright.Core.Readings.Deeds;

namespace Heapwright.App.Batches;

/// <summary>A material that went into a batch.</summary>
/// <param name="Ingredient">The material with its amount.</param>
/// <param name="LooseLitres">Its loose volume, litres, typically.</param>
/// <param name="Kilograms">Its wet mass, kg, typically.</param>
/// <param name="Load">The load it was taken from; null where the diary does not tell.</param>
public sealed record BatchPart(
    Ingredient Ingredient,
    double LooseLitres,
    double Kilograms,
    AddedStuff? Load
);
