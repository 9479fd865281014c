using System.Collections.Immutable;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Recipes;

/// <summary>
/// What a measurement costs the gardener, and the order that follows: the gain of chance over the effort. A squeeze and
/// a weighed bucket take minutes (1), drying takes hours of waiting (2), a laboratory takes days and money (4). The
/// weights are estimates: a laboratory comes before a weighed bucket only where it gains four times as much.
/// </summary>
public static class MeasureEffort
{
    /// <summary>The weight of a measurement's effort.</summary>
    /// <param name="measure">bucket_weight, oven_moisture, squeeze or lab.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is none of these.</exception>
    public static double Of(string measure) =>
        measure switch
        {
            "squeeze" or "bucket_weight" => 1,
            "oven_moisture" => 2,
            "lab" => 4,
            _ => throw new ArgumentOutOfRangeException(
                nameof(measure),
                measure,
                "bucket_weight, oven_moisture, squeeze or lab is allowed"
            ),
        };

    /// <summary>The measurements by gain over effort, the best first, with the reason for their place.</summary>
    /// <param name="gains">What each would gain; chances from 0 to 1.</param>
    public static ImmutableArray<MeasureGain> Rank(IReadOnlyCollection<MeasureGain> gains)
    {
        ArgumentNullException.ThrowIfNull(gains);
        var home = gains.Where(g => g.Measure != "lab").ToArray();
        return
        [
            .. gains
                .OrderByDescending(g => g.ChanceGain / Of(g.Measure))
                .ThenBy(g => Of(g.Measure))
                .ThenBy(g => g.Ingredient.Key, StringComparer.Ordinal)
                .ThenBy(g => g.Measure, StringComparer.Ordinal)
                .Select(g => g with { Why = WhyOf(g, home) }),
        ];
    }

    private static Reason WhyOf(MeasureGain gain, MeasureGain[] home)
    {
        if (gain.Measure != "lab")
        {
            return Reason.Of("recipes.effort_" + gain.Measure);
        }

        if (home.Length == 0)
        {
            return Reason.Of("recipes.effort_lab_alone");
        }

        // The place in the list and the reason for it must say the same.
        var first = home.MaxBy(g => g.ChanceGain / Of(g.Measure))!;
        var best = home.Max(g => g.ChanceGain);
        return Reason.Of(
            gain.ChanceGain / Of("lab") > first.ChanceGain / Of(first.Measure)
                ? "recipes.effort_lab_first"
                : "recipes.effort_lab_later",
            100 * gain.ChanceGain,
            100 * best
        );
    }
}
