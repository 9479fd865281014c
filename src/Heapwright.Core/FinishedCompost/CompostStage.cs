namespace Heapwright.Core.FinishedCompost;

/// <summary>How far a heap has come.</summary>
public enum CompostStage
{
    /// <summary>It rots and heats.</summary>
    Active,

    /// <summary>It loses its heat, and heats again when turned.</summary>
    Cooling,

    /// <summary>It is no longer hot and slowly becomes ripe.</summary>
    Curing,

    /// <summary>It is ripe: little more happens to it.</summary>
    Mature,
}
