namespace Heapwright.Core.Diagnosis;

/// <summary>What kind of cause it is.</summary>
public enum CauseGroup
{
    /// <summary>Where the heap is on its way; exactly one holds, or the heap is stalled.</summary>
    Stage,

    /// <summary>Something that is wrong, or may become so; several may hold at once.</summary>
    Fault,

    /// <summary>A growth that is seen and does no harm.</summary>
    Growth,
}
