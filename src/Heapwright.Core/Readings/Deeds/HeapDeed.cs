namespace Heapwright.Core.Readings.Deeds;

/// <summary>What was done to a heap, or happened to it.</summary>
public abstract record HeapDeed;
