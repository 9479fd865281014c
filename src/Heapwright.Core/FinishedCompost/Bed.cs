using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>A place that gets compost.</summary>
public sealed record Bed
{
    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>m².</summary>
    public required Spread SquareMetres { get; init; }

    /// <summary>How deep the compost is laid, cm; null for as deep as it goes.</summary>
    public Spread? DepthCentimetres { get; init; }

    /// <summary>How deep it is worked in, compost included, cm; null where it stays on top.</summary>
    public Spread? TilledCentimetres { get; init; }

    /// <summary>How it is used there.</summary>
    public CompostUse Use { get; init; } = CompostUse.Beds;

    /// <summary>The crop; null where it is not known.</summary>
    public Crop? Crop { get; init; }

    /// <summary>Whether what grows there is eaten.</summary>
    public bool IsFood { get; init; } = true;

    /// <summary>Whether the part that is eaten touches the soil.</summary>
    public bool TouchesSoil { get; init; } = true;

    /// <summary>Nitrogen that the crop needs, g/m²; null where no figure is known.</summary>
    public Spread? NitrogenNeed { get; init; }
}
