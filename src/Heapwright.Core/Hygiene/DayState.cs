namespace Heapwright.Core.Hygiene;

/// <summary>What a record says of a calendar day.</summary>
internal enum DayState
{
    /// <summary>Some probe was not read, and none was outside the band.</summary>
    Unknown,

    /// <summary>Every probe was read, and every reading was inside the band.</summary>
    Hot,

    /// <summary>A reading was outside the band.</summary>
    Cold,
}
