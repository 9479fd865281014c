namespace Heapwright.Core.Readings.Deeds;

/// <summary>The heap was finished.</summary>
public sealed record BuiltDeed : HeapDeed;
