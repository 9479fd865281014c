using System.Collections.Immutable;

namespace Heapwright.Core.FinishedCompost;

/// <summary>How often a sign is met at each stage: our estimate, wide on purpose.</summary>
public sealed record EvidenceRow
{
    /// <summary>The group: signs of one group have one cause and count as one.</summary>
    public required string Group { get; init; }

    /// <summary>What was looked at: a scale, or smell, see, age_days, ….</summary>
    public required string Sign { get; init; }

    /// <summary>What was found: a class, or a word.</summary>
    public required string Found { get; init; }

    /// <summary>Shape [stage]: the chance of finding it at each stage.</summary>
    public required ImmutableArray<double> Likelihood { get; init; }

    /// <summary>How much it is leant on, 0 to 1.</summary>
    public required double Weight { get; init; }

    /// <summary>What it rules out.</summary>
    public required UseLimits Limits { get; init; }
}
