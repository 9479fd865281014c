namespace Heapwright.Core.Bins;

/// <summary>The shape of a heap or of what holds it.</summary>
public enum BinShape
{
    /// <summary>Straight walls: length × width × height.</summary>
    Box,

    /// <summary>A long heap without walls: length × base width × height, parabolic across.</summary>
    Windrow,

    /// <summary>A free heap: base diameter × height.</summary>
    Cone,

    /// <summary>A round bin or ring of wire: diameter × height.</summary>
    Ring,
}
