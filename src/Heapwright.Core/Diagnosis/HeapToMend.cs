using Heapwright.Core.Quantities;

namespace Heapwright.Core.Diagnosis;

/// <summary>What is known of a heap that is to be mended; null for what is not.</summary>
public sealed record HeapToMend
{
    /// <summary>Its volume, m³, above 0.</summary>
    public Spread? VolumeM3 { get; init; }

    /// <summary>What a squeeze of the core does: dust, dry, sponge, drips or streams.</summary>
    public string? Squeeze { get; init; }

    /// <summary>kg C per kg N of what was put in.</summary>
    public Spread? CarbonNitrogenRatio { get; init; }

    /// <summary>Carbon of what was put in, % of dry mass.</summary>
    public Spread? CarbonPercent { get; init; }

    /// <summary>What it stands in: open, windrow, or one of the containers with walls.</summary>
    public string? Container { get; init; }

    /// <summary>The range of volumes that a word for a size stands for; null where it has no upper end.</summary>
    /// <param name="size">bucket, small, medium, large or tractor_size.</param>
    /// <remarks>The ends are those the words are explained by; the low ends of the first two are our estimates.</remarks>
    public static Spread? VolumeOf(string size) =>
        size switch
        {
            "bucket" => Spread.Of(0.008, 0.015, 0.03),
            "small" => Spread.Of(0.05, 0.2, 0.4),
            "medium" => Spread.Of(0.4, 0.9, 1.5),
            "large" => Spread.Of(1.5, 2.8, 5),
            _ => null,
        };
}
