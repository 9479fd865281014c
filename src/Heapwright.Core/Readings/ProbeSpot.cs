namespace Heapwright.Core.Readings;

/// <summary>Where in the heap a probe stood.</summary>
public enum ProbeSpot
{
    /// <summary>The middle.</summary>
    Core,

    /// <summary>Near a side, at half height.</summary>
    Side,

    /// <summary>Near the top.</summary>
    Top,

    /// <summary>Near the ground.</summary>
    Base,
}
