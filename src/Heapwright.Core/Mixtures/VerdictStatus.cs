namespace Heapwright.Core.Mixtures;

/// <summary>Where a quantity lies against its aim.</summary>
public enum VerdictStatus
{
    /// <summary>Most likely within.</summary>
    Good,

    /// <summary>Most likely below.</summary>
    Low,

    /// <summary>Most likely above.</summary>
    High,

    /// <summary>Cannot be told from what is known.</summary>
    Uncertain,
}
