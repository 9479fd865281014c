namespace Heapwright.Core.Readings.Deeds;

/// <summary>The heap was moved to another bay.</summary>
/// <param name="Bay">The bay.</param>
public sealed record MovedDeed(Guid Bay) : HeapDeed;
