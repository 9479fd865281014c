namespace Heapwright.Core.Diagnosis;

/// <summary>Why it cannot be told how much it takes to mend a heap.</summary>
public enum MendGap
{
    /// <summary>It can be told.</summary>
    None,

    /// <summary>Its size is not known.</summary>
    Size,

    /// <summary>Nobody squeezed a handful of the core.</summary>
    Squeeze,

    /// <summary>What was put in is not known.</summary>
    Contents,

    /// <summary>What is known of it says that nothing is wanted.</summary>
    NothingWanted,

    /// <summary>Its shape is not one whose surface follows from its volume.</summary>
    Shape,
}
