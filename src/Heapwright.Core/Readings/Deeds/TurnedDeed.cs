using Heapwright.Core.Simulation;

namespace Heapwright.Core.Readings.Deeds;

/// <summary>The heap, or part of it, was turned.</summary>
/// <param name="Thoroughness">How well it mixed.</param>
/// <param name="Part">What was turned.</param>
public sealed record TurnedDeed(Thoroughness Thoroughness, TurnedPart Part) : HeapDeed;
