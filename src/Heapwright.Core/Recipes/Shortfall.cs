using System.Collections.Immutable;

namespace Heapwright.Core.Recipes;

/// <summary>What is missing for a good heap, and where it could come from.</summary>
/// <param name="What">volume, nitrogen, carbon, water, dryness or air.</param>
/// <param name="Missing">How much, in <paramref name="Unit"/>.</param>
/// <param name="Unit">kg or l.</param>
/// <param name="Options">Materials that would mend it, the likeliest at home first.</param>
public sealed record Shortfall(
    string What,
    double Missing,
    string Unit,
    ImmutableArray<ShortfallOption> Options
);
