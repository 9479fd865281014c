using Heapwright.Core.Readings.Deeds;

namespace Heapwright.Core.Readings;

/// <summary>Something that was done to a heap, or happened to it.</summary>
public sealed record EventEntry : DiaryEntry
{
    /// <summary>What.</summary>
    public required HeapDeed Deed { get; init; }
}
