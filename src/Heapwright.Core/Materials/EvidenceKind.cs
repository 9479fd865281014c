namespace Heapwright.Core.Materials;

/// <summary>How a value came to be known.</summary>
public enum EvidenceKind
{
    /// <summary>Seen in print in the source named.</summary>
    Printed,

    /// <summary>Remembered from the source named, not seen in print.</summary>
    FromMemory,

    /// <summary>Computed from printed values by a stated rule.</summary>
    Derived,

    /// <summary>Our own estimate; its range is wide.</summary>
    Estimate,
}
