using Heapwright.Validation.Properties;

namespace Heapwright.Validation.Recipes;

/// <summary>
/// Every choice of whole buckets of a small question, judged by sums written here: whether it keeps the conditions, with
/// how much water, what it costs and how much of what is there it uses.
/// </summary>
internal static class ByHand
{
    /// <summary>The best value of the aim over all choices; null where no choice keeps the conditions.</summary>
    /// <param name="instance">The question.</param>
    /// <param name="slack">By how much, relatively, every condition is widened (above 0) or narrowed (below 0).</param>
    /// <returns>First the aim, then what decides between equals: cost and litres used, or litres used and cost.</returns>
    public static (double First, double Second)? Best(Instance instance, double slack)
    {
        (double, double)? best = null;
        foreach (var amounts in Choices(instance))
        {
            if (amounts.All(a => a == 0) || Water(instance, amounts, slack) is null)
            {
                continue;
            }

            var value = Value(instance, amounts);
            if (best is null || value.CompareTo(best.Value) < 0)
            {
                best = value;
            }
        }

        return best;
    }

    /// <summary>What a choice is worth under the question's aim, smaller being better.</summary>
    public static (double First, double Second) Value(Instance instance, int[] amounts)
    {
        double cost = 0;
        double used = 0;
        for (var i = 0; i < amounts.Length; i++)
        {
            if (instance.Picks[i].Price is { } price)
            {
                cost += price * amounts[i];
            }
            else
            {
                used += amounts[i];
            }
        }

        // Rounded, so that equals compare as equals.
        return instance.Aim == "least_cost"
            ? (Math.Round(cost, 6), Math.Round(-used, 6))
            : (Math.Round(-used, 6), Math.Round(cost, 6));
    }

    /// <summary>The water with which a choice keeps every condition, in litres; null where there is none.</summary>
    public static (double Low, double High)? Water(Instance instance, int[] amounts, double slack)
    {
        var sums = Sum(instance, amounts);
        var filled = sums.Litres * Instance.Factor;
        if (
            sums.Ratio < instance.Ratio.Low * (1 - slack)
            || sums.Ratio > instance.Ratio.High * (1 + slack)
            || (
                instance.Volume is { } v
                && (filled < v.Low * (1 - slack) || filled > v.High * (1 + slack))
            )
        )
        {
            return null;
        }

        // Moisture g with w litres: 100 (water + w)/(wet + w) = g.
        double For(double g) => ((g * sums.Wet) - (100 * (sums.Wet - sums.Dry))) / (100 - g);
        var low = Math.Max(0, For(instance.Moisture.Low * (1 - slack)));
        var high = For(instance.Moisture.High * (1 + slack));
        if (instance.LeastAir is { } air)
        {
            // A litre of water takes a litre of air.
            high = Math.Min(high, (sums.Air(filled) - (air * (1 - slack))) / 100 * filled);
        }

        return low <= high ? (low, high) : null;
    }

    /// <summary>The sums of a choice, without water.</summary>
    public static Sums Sum(Instance instance, int[] amounts)
    {
        var sums = new Sums();
        for (var i = 0; i < amounts.Length; i++)
        {
            var p = instance.Picks[i];
            sums.Add(
                amounts[i] * Instance.Bucket,
                p.Density,
                p.Moisture,
                p.Carbon,
                p.Nitrogen,
                p.Ash
            );
        }

        return sums;
    }

    private static IEnumerable<int[]> Choices(Instance instance)
    {
        var amounts = new int[instance.Picks.Count];
        while (true)
        {
            yield return [.. amounts];
            var i = 0;
            while (i < amounts.Length && amounts[i] == instance.Picks[i].Most)
            {
                amounts[i++] = 0;
            }

            if (i == amounts.Length)
            {
                yield break;
            }

            amounts[i]++;
        }
    }
}
