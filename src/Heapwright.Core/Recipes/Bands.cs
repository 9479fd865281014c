namespace Heapwright.Core.Recipes;

/// <summary>The ranges of a question; null where the asker switched one off.</summary>
/// <param name="CarbonNitrogen">kg C per kg N.</param>
/// <param name="Moisture">% of wet mass, after watering.</param>
/// <param name="Air">
/// % of the volume: at the filled volume where the asker made it a condition, of the lower half after two days where
/// it is an aim.
/// </param>
public sealed record Bands(Band? CarbonNitrogen, Band? Moisture, Band? Air)
{
    /// <summary>The usual aims.</summary>
    public static Bands Usual { get; } =
        new(
            new Band(
                Mixtures.Aims.CarbonNitrogen.Low,
                Mixtures.Aims.CarbonNitrogen.High,
                IsCondition: false
            ),
            new Band(Mixtures.Aims.Moisture.Low, Mixtures.Aims.Moisture.High, IsCondition: false),
            new Band(
                Mixtures.Aims.SettledAir.Low,
                Mixtures.Aims.SettledAir.High,
                IsCondition: false
            )
        );

    /// <summary>Whether the asker made any of them a condition.</summary>
    public bool AnyCondition =>
        CarbonNitrogen is { IsCondition: true }
        || Moisture is { IsCondition: true }
        || Air is { IsCondition: true };
}
