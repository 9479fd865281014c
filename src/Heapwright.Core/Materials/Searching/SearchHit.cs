namespace Heapwright.Core.Materials.Searching;

/// <summary>A material found.</summary>
/// <param name="Material">The place of the material in the library.</param>
/// <param name="Tier">3 the very words, 2 the same words in another form or order, 1 words of the same meaning, 0 alike.</param>
/// <param name="Score">How well the words fit, 0 to 1.</param>
/// <param name="Named">The share of the naming words of the question that were found, 0 to 1.</param>
/// <param name="Throughout">How well the words of the question are found in its names on average, 0 to 1.</param>
internal sealed record SearchHit(
    int Material,
    int Tier,
    double Score,
    double Named,
    double Throughout
)
{
    /// <summary>What is looked at among hits of one tier: of two that fit alike, what is called so throughout goes before what is called so in one name only, as clover is called green manure.</summary>
    public double Order => Score + (0.1 * Throughout);
}
