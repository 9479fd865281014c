namespace Heapwright.Core.Recipes;

/// <summary>One set of conditions that a search keeps: the asker's own, with more or less of the usual aims on top.</summary>
internal sealed record ConditionSet
{
    /// <summary>kg C per kg N, total.</summary>
    public Band? CarbonNitrogen { get; init; }

    /// <summary>kg C per kg N, lignin left out.</summary>
    public Band? AvailableCarbonNitrogen { get; init; }

    /// <summary>% of wet mass.</summary>
    public Band? Moisture { get; init; }

    /// <summary>% of the filled volume.</summary>
    public Band? Air { get; init; }

    /// <summary>The least share of the loose volume that is stiff, %; at the typical values.</summary>
    public double? StiffShare { get; init; }

    /// <summary>The least filled volume, litres; at the typical values.</summary>
    public double? LeastVolume { get; init; }

    /// <summary>The most filled volume, litres; at the typical values.</summary>
    public double? MostVolume { get; init; }

    /// <summary>The most that may be spent; null for no limit.</summary>
    public double? MostCost { get; init; }

    /// <summary>The chance with which the bands hold jointly.</summary>
    public double Chance { get; init; }
}
