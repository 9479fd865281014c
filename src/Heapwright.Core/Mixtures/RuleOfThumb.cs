using System.Collections.Immutable;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Mixtures;

/// <summary>Where a common rule of thumb gives another answer than the balance, and why.</summary>
public static class RuleOfThumb
{
    /// <summary>Averages that differ by less than this share from the balance are not worth a word.</summary>
    private const double WorthSaying = 0.15;

    /// <summary>A material drier than this, % of wet mass, stays dry inside a heap that is moist on the whole.</summary>
    private const double DryMaterial = 35;

    /// <summary>What is to be said about a mixture.</summary>
    /// <param name="mixture">The mixture.</param>
    public static ImmutableArray<Reason> Notes(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        var notes = ImmutableArray.CreateBuilder<Reason>();
        // The middle of the range shown beside it: the ratio of the typical values lies elsewhere where ranges are lopsided.
        var balance =
            mixture.Quantity(s => s.CarbonNitrogenRatio)?.Typical
            ?? mixture.Typical.CarbonNitrogenRatio;
        if (
            AverageOfRatios(mixture) is { } average
            && Math.Abs((average / balance) - 1) > WorthSaying
        )
        {
            notes.Add(Reason.Of("mixtures.averaging_differs", average, balance));
        }

        foreach (var part in mixture.Parts)
        {
            var dry = part.Typical.DryMass * part.Ingredient.Amount.Typical;
            var moisture = 100 * part.Typical.Water / part.Typical.WetMass;
            if (
                moisture < DryMaterial
                && dry > 0.1 * mixture.Typical.Matter.DryMass
                && part.Ingredient.Material?.CountsAs is not "soil"
            )
            {
                notes.Add(Reason.Of("mixtures.dry_inside", part.Ingredient.Name, moisture));
            }
        }

        return notes.ToImmutable();
    }

    /// <summary>
    /// The carbon to nitrogen ratios of the ingredients averaged by loose volume, as is often advised; it ignores
    /// density, moisture and how much nitrogen there is. Null for one ingredient or where a volume is not known.
    /// </summary>
    /// <param name="mixture">The mixture.</param>
    public static double? AverageOfRatios(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        double litres = 0;
        double sum = 0;
        foreach (var part in mixture.Parts)
        {
            var volume = part.Typical.LooseVolume * part.Ingredient.Amount.Typical;
            litres += volume;
            sum += volume * part.Typical.Carbon / part.Typical.Nitrogen;
        }

        var average = sum / litres;
        return mixture.Question.IsMixed && double.IsFinite(average) ? average : null;
    }
}
