using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>What was measured of a heap at its start, or of the compost at its end; null where it was not.</summary>
public sealed record MatterGiven
{
    /// <summary>Nothing was measured.</summary>
    public static MatterGiven None { get; } = new();

    /// <summary>kg as it lies.</summary>
    public Spread? WetMass { get; init; }

    /// <summary>kg of dry matter.</summary>
    public Spread? DryMass { get; init; }

    /// <summary>Water, % of wet mass.</summary>
    public Spread? Moisture { get; init; }

    /// <summary>Litres.</summary>
    public Spread? Volume { get; init; }

    /// <summary>kg/m³ as it lies.</summary>
    public Spread? BulkDensity { get; init; }

    /// <summary>Ash, % of dry mass.</summary>
    public Spread? Ash { get; init; }

    /// <summary>Organic carbon, % of dry mass.</summary>
    public Spread? Carbon { get; init; }

    /// <summary>Nitrogen, % of dry mass.</summary>
    public Spread? Nitrogen { get; init; }

    /// <summary>Carbon over nitrogen.</summary>
    public Spread? Ratio { get; init; }

    /// <summary>P, % of dry mass.</summary>
    public Spread? Phosphorus { get; init; }

    /// <summary>K, % of dry mass.</summary>
    public Spread? Potassium { get; init; }

    /// <summary>Nitrogen that plants get in the first year, % of all of it.</summary>
    public Spread? FirstYearNitrogen { get; init; }

    /// <summary>What a sieve holds back, % of mass and volume.</summary>
    public Spread? Oversize { get; init; }
}
