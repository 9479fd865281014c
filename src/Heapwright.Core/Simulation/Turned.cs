namespace Heapwright.Core.Simulation;

/// <summary>The heap, or part of it, is turned.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="Thoroughness">The share of the matter that ends up anywhere; the rest stays where it was.</param>
/// <param name="Part">What is turned.</param>
public record Turned(double Day, double Thoroughness, TurnedPart Part) : HeapEvent(Day);
