using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Recipes;

/// <summary>
/// Some amounts tried over the scenarios: in each, the stretch of water with which all bands hold. The best water for
/// any weighing of the scenarios is then found by going through the ends of the stretches in order.
/// </summary>
internal sealed class WaterTrial
{
    private readonly (double Water, int Scenario, bool Opens)[] ends;

    public WaterTrial(
        RecipeSpace space,
        ConditionSet set,
        double[] steps,
        IReadOnlyList<double> factors
    )
    {
        var all = new List<(double, int, bool)>();
        for (var s = 0; s < factors.Count; s++)
        {
            var sum = default(MassBalance);
            for (var i = 0; i < steps.Length; i++)
            {
                if (steps[i] > 0)
                {
                    sum += space.Variables[i].Cases[s] * steps[i];
                }
            }

            var (low, high) = Stretch(sum, factors[s], set);
            if (low <= high)
            {
                all.Add((low, s, true));
                all.Add((high, s, false));
            }
        }

        // Where one stretch ends and another begins at the same water, both count.
        ends = [.. all.OrderBy(e => e.Item1).ThenByDescending(e => e.Item3).ThenBy(e => e.Item2)];
    }

    /// <summary>The greatest weight of scenarios that one water satisfies.</summary>
    /// <param name="weights">Shape [scenario], adding up to 1.</param>
    public double BestShare(double[] weights)
    {
        double share = 0;
        double best = 0;
        foreach (var (_, scenario, opens) in ends)
        {
            share += opens ? weights[scenario] : -weights[scenario];
            best = Math.Max(best, share);
        }

        return best;
    }

    private static (double Low, double High) Stretch(MassBalance m, double factor, ConditionSet set)
    {
        if (
            !(set.CarbonNitrogen?.Holds(m.Carbon / m.Nitrogen) ?? true)
            || !(set.AvailableCarbonNitrogen?.Holds(m.AvailableCarbon / m.Nitrogen) ?? true)
        )
        {
            return (1, 0);
        }

        double low = 0;
        var high = double.MaxValue;
        if (set.Moisture?.Low is { } least)
        {
            low = Math.Max(low, ClosedForms.WaterForMoisture(m.WetMass, m.Water, least));
        }

        if (set.Moisture?.High is { } most)
        {
            high = Math.Min(high, ClosedForms.WaterForMoisture(m.WetMass, m.Water, most));
        }

        var volume = factor * m.LooseVolume;
        var solid = AirSpace.SolidAndWaterVolume(m);
        if (set.Air?.Low is { } airy)
        {
            high = Math.Min(high, ((1 - (airy / 100)) * volume) - solid);
        }

        if (set.Air?.High is { } tight)
        {
            low = Math.Max(low, ((1 - (tight / 100)) * volume) - solid);
        }

        return (low, high);
    }
}
