namespace Heapwright.Core.Diagnosis;

/// <summary>How much of a heap a material is, by eye.</summary>
public enum HeapShare
{
    /// <summary>Nothing said: taken as some.</summary>
    NotSaid,

    /// <summary>A sprinkling.</summary>
    Little,

    /// <summary>A good part.</summary>
    Some,

    /// <summary>Most of it.</summary>
    Most,

    /// <summary>All of it.</summary>
    Only,
}
