namespace Heapwright.Core.Diagnosis;

/// <summary>How a row of the table of signs works.</summary>
public enum SignEffect
{
    /// <summary>How often a word of a field with one answer is met before anything is known.</summary>
    Often,

    /// <summary>How many times more often the word is met where the given holds.</summary>
    Times,

    /// <summary>The chance that a sign is told although nothing calls it up.</summary>
    Anyway,

    /// <summary>The chance that the given alone calls up the sign.</summary>
    Shows,

    /// <summary>The share of its cases that the given takes away.</summary>
    KeepsAway,
}
