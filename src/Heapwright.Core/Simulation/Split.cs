namespace Heapwright.Core.Simulation;

/// <summary>Part of the heap is taken away, as much of every place in it.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="Share">The share of the volume that is taken, above 0 and below 1.</param>
public sealed record Split(double Day, double Share) : HeapEvent(Day);
