using Heapwright.Numerics.Search;

namespace Heapwright.Core.Recipes;

/// <summary>
/// The water of a plan. The search takes the middle of all water that keeps the conditions, which is right between a
/// least and a most moisture; where one of the two is open, that middle lies far out, and the water that makes the heap
/// as moist as is usual is taken instead, as near to it as the conditions allow.
/// </summary>
internal static class ChosenWater
{
    /// <summary>The litres of water to use.</summary>
    /// <param name="space">The amounts of the question.</param>
    /// <param name="set">The conditions that were searched under.</param>
    /// <param name="steps">The amounts found, in steps.</param>
    /// <param name="found">The water the search took.</param>
    public static double Of(RecipeSpace space, ConditionSet set, double[] steps, double found)
    {
        if (set.Moisture is { Low: not null, High: not null })
        {
            return found;
        }

        var problem = space.Problem(set, v => v.Litres);
        var judged = ChanceSearch.EvaluateShare(problem, steps);
        if (!judged.NominalHolds || !(judged.FreeLow <= judged.FreeHigh))
        {
            return found;
        }

        var usual = problem.FreePreferred;
        for (var i = 0; i < steps.Length; i++)
        {
            usual += problem.FreePreferredSlopes[i] * steps[i];
        }

        usual = Math.Clamp(Math.Max(0, usual), judged.FreeLow, judged.FreeHigh);
        return
            ChanceSearch.ShareAt(problem, steps, usual)
            >= Math.Min(judged.Share, problem.Chance) - 1e-12
            ? usual
            : found;
    }
}
