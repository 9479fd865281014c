namespace Heapwright.Core.Simulation;

/// <summary>What of a heap is turned.</summary>
public enum TurnedPart
{
    /// <summary>All of it.</summary>
    All,

    /// <summary>The upper half.</summary>
    TopHalf,

    /// <summary>All of it, the outside into the middle.</summary>
    OutsideIn,
}
