using Heapwright.Core.Mixtures;
using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>How much of one ingredient goes into one layer, or is left over.</summary>
/// <param name="Ingredient">The ingredient, with the amount of the whole plan.</param>
/// <param name="Amount">How many of the ingredient's own unit go in here.</param>
/// <param name="Loose">Their loose volume at typical values.</param>
/// <param name="Mass">Their wet mass at typical values, before water is added.</param>
/// <param name="InMiddle">Whether it is laid in the middle only, away from the sides.</param>
public sealed record LayerPart(
    Ingredient Ingredient,
    double Amount,
    Volume Loose,
    Mass Mass,
    bool InMiddle
);
