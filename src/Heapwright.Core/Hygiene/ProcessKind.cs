namespace Heapwright.Core.Hygiene;

/// <summary>How a heap is kept, as rules on heat tell heaps apart.</summary>
public enum ProcessKind
{
    /// <summary>A long free heap that is turned.</summary>
    Windrow,

    /// <summary>A heap that is not turned; air is blown or drawn through it.</summary>
    StaticAerated,

    /// <summary>A closed vessel with controlled air.</summary>
    InVessel,

    /// <summary>A bin or bay that air enters by itself.</summary>
    Bin,
}
