namespace Heapwright.Validation.Recipes;

/// <summary>A material of a small exact question: everything known, whole buckets of a known size.</summary>
/// <param name="Name">A name no library knows.</param>
/// <param name="Carbon">% of dry mass.</param>
/// <param name="Nitrogen">% of dry mass.</param>
/// <param name="Moisture">% of wet mass.</param>
/// <param name="Density">kg/m³ loose.</param>
/// <param name="Ash">% of dry mass.</param>
/// <param name="Most">Buckets there are, or that may be bought.</param>
/// <param name="Price">Price of a bucket; null for what is there.</param>
internal sealed record Pick(
    string Name,
    double Carbon,
    double Nitrogen,
    double Moisture,
    double Density,
    double Ash,
    int Most,
    double? Price
);
