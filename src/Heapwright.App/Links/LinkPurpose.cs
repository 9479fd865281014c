namespace Heapwright.App.Links;

/// <summary>What a secret address is for.</summary>
public enum LinkPurpose
{
    /// <summary>The days to come, for a calendar.</summary>
    Calendar,

    /// <summary>A heap, or the yard, to look at.</summary>
    Share,
}
