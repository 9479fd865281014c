namespace Heapwright.Core.Readings;

/// <summary>How far a reading can be believed.</summary>
public enum PlausibilityStatus
{
    /// <summary>Nothing speaks against it.</summary>
    Plausible,

    /// <summary>Something speaks against it; it may be true all the same.</summary>
    Doubtful,

    /// <summary>It would fit if it were meant in the other unit: the person is asked.</summary>
    Asks,

    /// <summary>A heap cannot have this temperature.</summary>
    Impossible,
}
