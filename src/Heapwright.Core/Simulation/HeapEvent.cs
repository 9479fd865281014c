namespace Heapwright.Core.Simulation;

/// <summary>Something done to a heap.</summary>
/// <param name="Day">Days since building.</param>
public abstract record HeapEvent(double Day);
