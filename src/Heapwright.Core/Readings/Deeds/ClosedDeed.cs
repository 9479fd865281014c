namespace Heapwright.Core.Readings.Deeds;

/// <summary>The heap is no longer followed: it is done, used up or given up.</summary>
public sealed record ClosedDeed : HeapDeed;
