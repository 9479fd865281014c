using System.Collections.Immutable;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>Where a compost stands on a scale.</summary>
/// <param name="Scale">The scale.</param>
/// <param name="Value">The value found.</param>
/// <param name="Class">The class of the typical value.</param>
/// <param name="Chances">Shape [class]: the chance of each class, the error of the test included.</param>
public sealed record ScaleFinding(
    CompostScale Scale,
    Spread Value,
    ScaleClass Class,
    ImmutableArray<double> Chances
)
{
    /// <summary>Whether the value is only an end: the test was stopped while it still rose.</summary>
    public bool IsAtLeast { get; init; }

    /// <summary>The chance that a class which rules a use out is the true one.</summary>
    /// <param name="use">The use.</param>
    public double ChanceBarred(CompostUse use) => Chance(c => c.Limits.Bars.Contains(use));

    /// <summary>The chance that a class which rules a use out, or asks for care, is the true one.</summary>
    /// <param name="use">The use.</param>
    public double ChanceCare(CompostUse use) =>
        Chance(c => c.Limits.Bars.Contains(use) || c.Limits.Cares.Contains(use));

    private double Chance(Func<ScaleClass, bool> holds)
    {
        var chance = 0.0;
        for (var i = 0; i < Chances.Length; i++)
        {
            chance += holds(Scale.Classes[i]) ? Chances[i] : 0;
        }

        return Math.Min(1, chance);
    }
}
