using System.Collections.Immutable;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Mixtures;

/// <summary>One quantity of a mixture against its aim.</summary>
/// <param name="Aim">The aim.</param>
/// <param name="Value">The quantity.</param>
/// <param name="Status">Where it lies.</param>
/// <param name="ChanceGood">The chance that it lies within, 0 to 1.</param>
/// <param name="Why">What that means for the heap.</param>
public sealed record Verdict(
    Aim Aim,
    Spread Value,
    VerdictStatus Status,
    double ChanceGood,
    Reason Why
)
{
    /// <summary>A verdict needs a chance of at least this to be more than <see cref="VerdictStatus.Uncertain"/>.</summary>
    public const double Likely = 0.6;

    /// <summary>The quantities on which verdicts are given, each with how it is taken from one case.</summary>
    private static readonly ImmutableArray<(Aim Aim, Func<MixtureState, double> Quantity)> Judged =
    [
        (Aims.CarbonNitrogen, s => s.CarbonNitrogenRatio),
        (Aims.AvailableCarbonNitrogen, s => s.AvailableCarbonNitrogenRatio),
        (Aims.Moisture, s => s.Moisture),
        (Aims.Air, s => s.FreeAirSpace),
        (Aims.SettledAir, s => s.FreeAirSpaceSettled),
        (Aims.StiffShare, s => s.StiffShare),
        (Aims.BulkDensity, s => s.BulkDensity),
    ];

    /// <summary>All verdicts on a mixture; a quantity that is not known has none.</summary>
    /// <param name="mixture">The mixture.</param>
    public static ImmutableArray<Verdict> On(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        var verdicts = ImmutableArray.CreateBuilder<Verdict>();
        foreach (var (usual, quantity) in Judged)
        {
            if (mixture.Quantity(quantity) is { } value)
            {
                var aim = usual == Aims.Moisture ? MoistureAim(mixture) : usual;
                verdicts.Add(Of(mixture, aim, value, quantity));
            }
        }

        return verdicts.ToImmutable();
    }

    /// <summary>The moisture aim for what the mixture is made of.</summary>
    /// <param name="mixture">The mixture.</param>
    public static Aim MoistureAim(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        double leafy = 0;
        double fine = 0;
        double all = 0;
        foreach (var part in mixture.Parts)
        {
            var litres = part.Typical.LooseVolume * part.Ingredient.Amount.Typical;
            if (double.IsNaN(litres))
            {
                return Aims.Moisture;
            }

            all += litres;
            leafy += part.Ingredient.Material is { Group: "straw_hay" or "leaves" } ? litres : 0;
            fine += part.Ingredient.Material is { Particle: "fine" } ? litres : 0;
        }

        return Aims.MoistureFor(leafy / all, fine / all);
    }

    private static Verdict Of(
        Mixture mixture,
        Aim aim,
        Spread value,
        Func<MixtureState, double> quantity
    )
    {
        var good = mixture.Chance(s => aim.Holds(quantity(s)));
        var below = aim.Low is { } low ? mixture.Chance(s => quantity(s) < low) : 0;
        var above = aim.High is { } high ? mixture.Chance(s => quantity(s) > high) : 0;
        var status =
            good >= Likely ? VerdictStatus.Good
            : below >= Likely ? VerdictStatus.Low
            : above >= Likely ? VerdictStatus.High
            : VerdictStatus.Uncertain;
        return new Verdict(aim, value, status, good, ReasonFor(mixture, aim, status));
    }

    private static Reason ReasonFor(Mixture mixture, Aim aim, VerdictStatus status)
    {
        // Much lignin makes the total C:N look too high while the carbon within reach is right.
        if (
            aim == Aims.CarbonNitrogen
            && status == VerdictStatus.High
            && mixture.Typical.AvailableCarbonNitrogenRatio <= Aims.AvailableCarbonNitrogenFine.High
            && mixture.Typical.CarbonNitrogenRatio <= Aims.HighestRatioOfWood
        )
        {
            return Reason.Of("mixtures.carbon_nitrogen_ratio_high_but_woody");
        }

        // What is packed tight from the start was never airy.
        if (
            aim == Aims.SettledAir
            && status == VerdictStatus.Low
            && !Aims.Air.Holds(mixture.Typical.FreeAirSpace)
        )
        {
            return Reason.Of("mixtures.free_air_space_pct_low");
        }

        var word = status switch
        {
            VerdictStatus.Good => "good",
            VerdictStatus.Low => "low",
            VerdictStatus.High => "high",
            _ => "uncertain",
        };
        return Reason.Of("mixtures." + aim.Quantity + "_" + word);
    }
}
