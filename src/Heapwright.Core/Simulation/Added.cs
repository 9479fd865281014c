using System.Collections.Immutable;
using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Simulation;

/// <summary>Something is laid on top.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="Ingredients">What.</param>
public sealed record Added(double Day, ImmutableArray<Ingredient> Ingredients) : HeapEvent(Day);
