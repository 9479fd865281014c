namespace Heapwright.Core.Readings.Deeds;

/// <summary>Another heap was put onto this one.</summary>
/// <param name="OtherHeap">The other heap, if it is kept too.</param>
public sealed record MergedDeed(Guid? OtherHeap) : HeapDeed;
