namespace Heapwright.Core.Recipes;

/// <summary>The chance of being within each range, 0 to 1; null where the range is switched off.</summary>
/// <param name="CarbonNitrogen">Within the C:N range.</param>
/// <param name="Moisture">Within the moisture range.</param>
/// <param name="Air">Within the air range.</param>
/// <param name="All">Within all of them at once.</param>
public sealed record ChanceInBand(
    double? CarbonNitrogen,
    double? Moisture,
    double? Air,
    double All
);
