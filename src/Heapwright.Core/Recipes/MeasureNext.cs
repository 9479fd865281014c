using System.Collections.Immutable;
using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Recipes;

/// <summary>
/// Which single measurement would raise the chance most for its effort: for each thing that could be measured, the outcomes it could
/// have are gone through, the scenarios weighed by how well they fit the outcome, and the best amounts near the plan
/// and the best water chosen again. The expected gain is the mean over the outcomes.
/// </summary>
internal static class MeasureNext
{
    private const int Outcomes = 9;
    private const int MostNeighbours = 16;
    private const double WorthSaying = 0.01;

    public static ImmutableArray<MeasureGain> For(
        RecipeQuestion question,
        RecipeSpace space,
        ConditionSet set,
        double[] steps
    )
    {
        if (space.Exact)
        {
            return [];
        }

        var factors = space.Factors;
        var trials = Neighbours(question, space, set, steps)
            .Select(x => new WaterTrial(space, set, x, factors))
            .ToArray();
        var even = Enumerable.Repeat(1.0 / factors.Count, factors.Count).ToArray();
        var now = trials.Max(t => t.BestShare(even));
        var gains = ImmutableArray.CreateBuilder<MeasureGain>();
        var weights = new double[factors.Count];
        for (var i = 0; i < steps.Length; i++)
        {
            if (steps[i] <= 0 || (question.Onto is not null && i == 0))
            {
                continue;
            }

            foreach (var (measure, features) in Features(space.Variables[i]))
            {
                if (
                    features.Any(f => f.Values.Any(v => !double.IsFinite(v)))
                    || features.All(f => IsFlat(f.Values))
                )
                {
                    continue;
                }

                var order = Enumerable
                    .Range(0, factors.Count)
                    .OrderBy(s => features[0].Values[s])
                    .ThenBy(s => s)
                    .ToArray();
                double sum = 0;
                for (var k = 0; k < Outcomes; k++)
                {
                    Weigh(features, order[(int)((k + 0.5) / Outcomes * order.Length)], weights);
                    sum += trials.Max(t => t.BestShare(weights));
                }

                var gain = (sum / Outcomes) - now;
                if (gain >= WorthSaying)
                {
                    gains.Add(new MeasureGain(space.Variables[i].Item.Ingredient, measure, gain));
                }
            }
        }

        return [.. MeasureEffort.Rank(gains).Take(5)];
    }

    private static bool IsFlat(double[] values) => values.Max() - values.Min() < 1e-12;

    // Errors of measurement: a weighed bucket 5 %, drying 2 points, a squeeze 7 points, a laboratory 5 % of nitrogen
    // and 3 % of carbon (estimates).
    private static IEnumerable<(
        string Measure,
        (double[] Values, double Error)[] Features
    )> Features(RecipeVariable v)
    {
        double[] Of(Func<MassBalance, double> quantity) => [.. v.Cases.Select(quantity)];
        var moisture = Of(b => 100 * b.Water / b.WetMass);
        if (!v.Item.Ingredient.Unit.IsMass)
        {
            yield return ("bucket_weight", [(Of(b => Math.Log(b.WetMass / b.LooseVolume)), 0.05)]);
        }

        yield return ("oven_moisture", [(moisture, 2)]);
        yield return ("squeeze", [(moisture, 7)]);
        yield return (
            "lab",
            [
                (Of(b => Math.Log(b.Nitrogen / b.DryMass)), 0.05),
                (Of(b => Math.Log(b.Carbon / b.DryMass)), 0.03),
            ]
        );
    }

    private static void Weigh(
        (double[] Values, double Error)[] features,
        int truth,
        double[] weights
    )
    {
        double sum = 0;
        for (var s = 0; s < weights.Length; s++)
        {
            double distance = 0;
            foreach (var (values, error) in features)
            {
                var z = (values[s] - values[truth]) / error;
                distance += z * z;
            }

            weights[s] = Math.Exp(-0.5 * distance);
            sum += weights[s];
        }

        for (var s = 0; s < weights.Length; s++)
        {
            weights[s] /= sum;
        }
    }

    private static List<double[]> Neighbours(
        RecipeQuestion question,
        RecipeSpace space,
        ConditionSet set,
        double[] steps
    )
    {
        var all = new List<double[]> { steps };
        foreach (
            var i in Enumerable
                .Range(0, steps.Length)
                .OrderByDescending(i => space.Variables[i].Litres * steps[i])
                .ThenBy(i => i)
        )
        {
            if (question.Onto is not null && i == 0)
            {
                continue;
            }

            foreach (var by in new[] { -1.0, 1.0 })
            {
                var near = (double[])steps.Clone();
                near[i] = Math.Clamp(
                    near[i] + by,
                    space.Variables[i].Least,
                    space.Variables[i].Most
                );
                var filled = space.FilledVolume(near);
                var fits =
                    filled > 0
                    && filled <= (set.MostVolume ?? double.PositiveInfinity)
                    && filled >= (set.LeastVolume ?? 0);
                if (near[i] != steps[i] && fits && all.Count <= MostNeighbours)
                {
                    all.Add(near);
                }
            }
        }

        return all;
    }
}
