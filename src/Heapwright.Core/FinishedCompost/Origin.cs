namespace Heapwright.Core.FinishedCompost;

/// <summary>Where a quantity of the compost is from, the surest first.</summary>
public enum Origin
{
    /// <summary>It was measured.</summary>
    Measured,

    /// <summary>It follows from the ash before and after.</summary>
    Ash,

    /// <summary>It follows from a measured volume and a weight by volume.</summary>
    Volume,

    /// <summary>It is what the simulation of this heap, fitted to its readings, says.</summary>
    Simulated,

    /// <summary>It follows from what went in.</summary>
    Recipe,

    /// <summary>It is what is usual.</summary>
    Usual,
}
