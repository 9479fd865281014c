namespace Heapwright.Core.Simulation;

/// <summary>The cover is changed.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="Cover">The new cover.</param>
public sealed record Covered(double Day, Barrier Cover) : HeapEvent(Day);
