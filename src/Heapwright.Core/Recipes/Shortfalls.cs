using System.Collections.Immutable;
using Heapwright.Core.Amounts;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Recipes;

/// <summary>Finds what a plan lacks at the typical values, and how much of what would mend it.</summary>
internal static class Shortfalls
{
    /// <summary>More than this, litres, is not suggested: it would be another heap.</summary>
    private const double MostSuggested = 3000;

    public static ImmutableArray<Shortfall> Of(
        RecipeQuestion question,
        RecipePlan plan,
        ConditionSet set,
        FetchFirst fetchable
    )
    {
        var found = ImmutableArray.CreateBuilder<Shortfall>();
        var state = plan.Mixture.Typical;
        var m = state.Matter;
        var factor = RecipeSpace.FactorOf(question).Typical;
        if ((set.LeastVolume ?? 0) is var least && state.FilledVolume < least * (1 - 1e-9))
        {
            found.Add(
                new Shortfall(
                    "volume",
                    least - state.FilledVolume,
                    "l",
                    Options(fetchable, "volume", _ => (least - state.FilledVolume) / factor)
                )
            );
        }

        AddRatio(found, set.CarbonNitrogen, m.Carbon, m.Nitrogen, b => b.Carbon, fetchable);
        AddRatio(
            found,
            set.AvailableCarbonNitrogen,
            m.AvailableCarbon,
            m.Nitrogen,
            b => b.AvailableCarbon,
            fetchable
        );
        if (set.Moisture?.High is { } wet && state.Moisture > wet * (1 + 1e-9))
        {
            var g = wet / 100;
            found.Add(
                new Shortfall(
                    "dryness",
                    m.Water - (g / (1 - g) * m.DryMass),
                    "kg",
                    Options(
                        fetchable,
                        "dryness",
                        b => (m.Water - (g * m.WetMass)) / ((g * b.WetMass) - b.Water)
                    )
                )
            );
        }
        else if (set.Moisture?.Low is { } dry && state.Moisture < dry * (1 - 1e-9))
        {
            var water = ClosedForms.WaterForMoisture(m.WetMass, m.Water, dry);
            found.Add(new Shortfall("water", water, "l", []));
        }

        if (set.Air?.Low is { } air && state.FreeAirSpace < air * (1 - 1e-9))
        {
            var wanted = 1 - (air / 100);
            var tight = AirSpace.SolidAndWaterVolume(m) - (wanted * state.FilledVolume);
            found.Add(
                new Shortfall(
                    "air",
                    (air - state.FreeAirSpace) / 100 * state.FilledVolume,
                    "l",
                    Options(
                        fetchable,
                        "air",
                        b =>
                            tight
                            / ((wanted * factor * b.LooseVolume) - AirSpace.SolidAndWaterVolume(b))
                    )
                )
            );
        }
        else if (set.StiffShare is { } stiff && state.StiffShare < stiff * (1 - 1e-9))
        {
            var needed = (stiff / 100 * m.LooseVolume) - m.StiffVolume;
            found.Add(
                new Shortfall(
                    "air",
                    needed,
                    "l",
                    Options(
                        fetchable,
                        "air",
                        b => needed / (b.StiffVolume - (stiff / 100 * b.LooseVolume))
                    )
                )
            );
        }

        return found.ToImmutable();
    }

    private static void AddRatio(
        ImmutableArray<Shortfall>.Builder found,
        Band? band,
        double carbon,
        double nitrogen,
        Func<MassBalance, double> carbonOf,
        FetchFirst fetchable
    )
    {
        if (band?.High is { } high && carbon > high * nitrogen * (1 + 1e-9))
        {
            found.Add(
                new Shortfall(
                    "nitrogen",
                    (carbon / high) - nitrogen,
                    "kg",
                    Options(
                        fetchable,
                        "nitrogen",
                        b => (carbon - (high * nitrogen)) / ((high * b.Nitrogen) - carbonOf(b))
                    )
                )
            );
        }
        else if (band?.Low is { } low && carbon < low * nitrogen * (1 - 1e-9))
        {
            found.Add(
                new Shortfall(
                    "carbon",
                    (low * nitrogen) - carbon,
                    "kg",
                    Options(
                        fetchable,
                        "carbon",
                        b => ((low * nitrogen) - carbon) / (carbonOf(b) - (low * b.Nitrogen))
                    )
                )
            );
        }
    }

    private static ImmutableArray<ShortfallOption> Options(
        FetchFirst fetchable,
        string what,
        Func<MassBalance, double> litres
    )
    {
        var options = ImmutableArray.CreateBuilder<ShortfallOption>();
        foreach (var material in fetchable.For(what))
        {
            var needed = litres(OneLitre(material));
            if (needed is > 0 and < MostSuggested)
            {
                options.Add(new ShortfallOption(material, needed));
            }
        }

        return options.ToImmutable();
    }

    private static MassBalance OneLitre(Material material) =>
        IngredientSample
            .Draw(
                new Ingredient
                {
                    Name = material.Name,
                    Material = material,
                    Properties = material.Properties,
                    Amount = Spread.Exact(1),
                    Unit = MeasureUnits.Find("l")!,
                },
                new QuasiRandomSet(1, 1)
            )
            .Typical;
}
