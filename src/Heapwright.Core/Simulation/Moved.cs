using Heapwright.Core.Bins;

namespace Heapwright.Core.Simulation;

/// <summary>The heap is forked over into another place, which turns it.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="Thoroughness">The share of the matter that ends up anywhere; the rest stays where it was.</param>
/// <param name="Bin">The other place; null for one of the same size. Free heaps keep their outline.</param>
/// <param name="Walls">Its walls; null for the same.</param>
public sealed record Moved(double Day, double Thoroughness, Bin? Bin, Barrier? Walls)
    : Turned(Day, Thoroughness, TurnedPart.All);
