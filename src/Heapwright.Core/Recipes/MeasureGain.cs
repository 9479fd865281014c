using Heapwright.Core.Mixtures;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Recipes;

/// <summary>How much a measurement would raise the chance of being within the ranges.</summary>
/// <param name="Ingredient">What is measured.</param>
/// <param name="Measure">bucket_weight, oven_moisture, squeeze or lab.</param>
/// <param name="ChanceGain">Expected gain of the chance, 0 to 1.</param>
public sealed record MeasureGain(Ingredient Ingredient, string Measure, double ChanceGain)
{
    /// <summary>Why it stands at its place: its effort, and for a laboratory what could be had at home.</summary>
    public Reason Why { get; init; } = Reason.Of("recipes.effort_" + Measure);
}
