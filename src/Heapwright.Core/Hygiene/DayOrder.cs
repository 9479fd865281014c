namespace Heapwright.Core.Hygiene;

/// <summary>Whether the hot days of a rule must follow one another.</summary>
public enum DayOrder
{
    /// <summary>They must.</summary>
    Consecutive,

    /// <summary>They need not.</summary>
    Any,

    /// <summary>The rule does not say, or says "as continuous as possible".</summary>
    Open,
}
