namespace Heapwright.Core.Diagnosis;

/// <summary>What stuff is added for to mend a heap.</summary>
public enum MendPurpose
{
    /// <summary>Dry browns take up water.</summary>
    DryUp,

    /// <summary>Greens bring nitrogen.</summary>
    BringNitrogen,

    /// <summary>Browns that rot bind nitrogen.</summary>
    BindNitrogen,

    /// <summary>Browns lie on it, a hand deep.</summary>
    Cover,
}
