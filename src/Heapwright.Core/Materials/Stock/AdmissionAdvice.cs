namespace Heapwright.Core.Materials.Stock;

/// <summary>Whether a material may go into a heap.</summary>
public enum AdmissionAdvice
{
    /// <summary>It may.</summary>
    May,

    /// <summary>It may, with the care its cautions name.</summary>
    WithCare,

    /// <summary>Better not.</summary>
    NotAdvised,

    /// <summary>Never.</summary>
    Never,
}
