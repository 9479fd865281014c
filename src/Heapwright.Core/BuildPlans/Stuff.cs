using System.Collections.Immutable;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;

namespace Heapwright.Core.BuildPlans;

/// <summary>An ingredient at its typical values, with where it goes.</summary>
internal sealed class Stuff
{
    /// <summary>Carbon over nitrogen from which a stuff that is in no library counts as brown; common practice.</summary>
    private const double BrownRatio = 35;

    /// <summary>Wood takes up water slowly: more than brings it to this % runs through it; an estimate.</summary>
    private const double WoodMoisture = 45;

    public Stuff(Ingredient ingredient, MassBalance perUnit)
    {
        Ingredient = ingredient;
        PerUnit = perUnit;
        Class = ClassOf(ingredient.Material, perUnit);
    }

    public Ingredient Ingredient { get; }

    public MassBalance PerUnit { get; }

    public StuffClass Class { get; private set; }

    public double Amount => Ingredient.Amount.Typical;

    public double Litres => PerUnit.LooseVolume * Amount;

    /// <summary>How thick a layer of it may be, cm.</summary>
    public double Limit =>
        Class switch
        {
            StuffClass.Grass => LayerLimits.Grass,
            StuffClass.Leaves => LayerLimits.Leaves,
            StuffClass.Soil => LayerLimits.Soil,
            _ when Scattered => LayerLimits.Grass,
            _ => LayerLimits.Other,
        };

    public bool IsBrown => Class is StuffClass.Brown or StuffClass.Leaves;

    public bool IsGreen => Class is StuffClass.Green or StuffClass.Grass;

    /// <summary>Whether it clumps or burns in a layer and is scattered instead.</summary>
    public bool Scattered => Prepare.Contains("scatter_thinly", StringComparer.Ordinal);

    public double StiffShare => PerUnit.StiffVolume / PerUnit.LooseVolume;

    public bool IsCoarse => Ingredient.Material?.Particle == "coarse";

    public ImmutableArray<string> Prepare => Ingredient.Material?.Prepare ?? [];

    /// <summary>Water that brings one unit of it to a moisture, litres; 0 if it is as wet already.</summary>
    public double WaterNeed(double moisture) =>
        Class is StuffClass.Soil || Ingredient.Material?.Group == "mineral"
            ? 0
            : Math.Max(
                0,
                ClosedForms.WaterForMoisture(
                    PerUnit.WetMass,
                    PerUnit.Water,
                    Class == StuffClass.Structure ? Math.Min(moisture, WoodMoisture) : moisture
                )
            );

    /// <summary>Where no other green is there, what is else scattered over greens is laid as one.</summary>
    public void LayAsGreen() => Class = StuffClass.Green;

    /// <summary>A little grass is scattered over the other greens.</summary>
    public void Scatter() => Class = StuffClass.Sprinkle;

    private static StuffClass ClassOf(Material? material, MassBalance perUnit)
    {
        if (material is null)
        {
            return perUnit.StiffVolume >= perUnit.LooseVolume / 2 ? StuffClass.Structure
                : perUnit.Carbon >= BrownRatio * perUnit.Nitrogen ? StuffClass.Brown
                : StuffClass.Green;
        }

        if (
            material.Prepare.Contains("bury_in_middle", StringComparer.Ordinal)
            || material.Cautions.Contains("attracts_animals", StringComparer.Ordinal)
        )
        {
            return StuffClass.Kitchen;
        }

        var scattered = material.Prepare.Contains("scatter_thinly", StringComparer.Ordinal);
        return material.CountsAs switch
        {
            "soil" => StuffClass.Soil,
            "structure" => StuffClass.Structure,
            "brown" => material.Group == "leaves" ? StuffClass.Leaves : StuffClass.Brown,
            _ when scattered || material.Group == "mineral" => StuffClass.Sprinkle,
            _ => material.Group == "grass" ? StuffClass.Grass : StuffClass.Green,
        };
    }
}
