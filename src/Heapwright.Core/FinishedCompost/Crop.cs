using System.Collections.Immutable;
using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>A crop of a bed.</summary>
public sealed record Crop
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Other words for it.</summary>
    public required ImmutableArray<string> Words { get; init; }

    /// <summary>Whether people eat it.</summary>
    public required bool IsFood { get; init; }

    /// <summary>Whether the part that is eaten touches the soil.</summary>
    public required bool TouchesSoil { get; init; }

    /// <summary>Nitrogen it takes up in a season, g/m².</summary>
    public required Spread NitrogenNeed { get; init; }

    /// <summary>The key of the source of its need.</summary>
    public required string Source { get; init; }

    /// <summary>How its need came to be known.</summary>
    public required EvidenceKind Kind { get; init; }
}
