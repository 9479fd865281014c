using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Mixtures;

/// <summary>An ingredient at every point of a sample set: what one unit of it holds, and how many units there are.</summary>
public sealed class IngredientSample
{
    private IngredientSample(
        Ingredient ingredient,
        MassBalance typical,
        MassBalance[] perUnit,
        double[] amount
    )
    {
        Ingredient = ingredient;
        Typical = typical;
        PerUnit = perUnit;
        Amount = amount;
    }

    /// <summary>The ingredient.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>One unit with every property at its typical value.</summary>
    public MassBalance Typical { get; }

    /// <summary>Shape [point]: one unit.</summary>
    public IReadOnlyList<MassBalance> PerUnit { get; }

    /// <summary>Shape [point]: how many units.</summary>
    public IReadOnlyList<double> Amount { get; }

    /// <summary>Draws an ingredient.</summary>
    /// <param name="ingredient">The ingredient; nitrogen, carbon (or one of them and the ratio) and moisture known.</param>
    /// <param name="points">The sample set of the question.</param>
    /// <exception cref="ArgumentException">A property that is needed is not known.</exception>
    public static IngredientSample Draw(Ingredient ingredient, QuasiRandomSet points)
    {
        ArgumentNullException.ThrowIfNull(ingredient);
        ArgumentNullException.ThrowIfNull(points);
        var n = points.Count;
        var block = points.Block(ingredient.Key);
        var u = new double[n];
        var columns = new double[PropertyFacts.Count][];
        foreach (var property in PropertyFacts.All)
        {
            if (ingredient.Properties[property] is { } spread)
            {
                block.Fill((int)property, u);
                columns[(int)property] = spread.Sample(u, PropertyFacts.Scale(property));
            }
        }

        double[]? ratio = null;
        if (ingredient.Ratio is { } given)
        {
            block.Fill(PropertyFacts.Count, u);
            ratio = given.Sample(u, SpreadScale.Positive);
        }

        // The same barrow carries everything: its size is one unknown, shared by all that is measured in it.
        points.Block("unit " + ingredient.Unit.Unit).Fill(0, u);
        var size = ingredient.Unit.Size.Sample(u, SpreadScale.Positive);
        block.Fill(PropertyFacts.Count + 1, u);
        var amount = ingredient.Amount.Sample(u, SpreadScale.Positive);

        var value = new double[PropertyFacts.Count];
        var perUnit = new MassBalance[n];
        for (var i = 0; i < n; i++)
        {
            for (var p = 0; p < value.Length; p++)
            {
                value[p] = columns[p] is { } column ? column[i] : double.NaN;
            }

            perUnit[i] = Balance(ingredient, value, ratio?[i], size[i]);
        }

        for (var p = 0; p < value.Length; p++)
        {
            value[p] = ingredient.Properties[(MaterialProperty)p]?.Typical ?? double.NaN;
        }

        var typical = Balance(
            ingredient,
            value,
            ingredient.Ratio?.Typical,
            ingredient.Unit.Size.Typical
        );
        return new IngredientSample(ingredient, typical, perUnit, amount);
    }

    private static MassBalance Balance(
        Ingredient ingredient,
        double[] value,
        double? ratio,
        double size
    )
    {
        const int N = (int)MaterialProperty.Nitrogen;
        const int C = (int)MaterialProperty.Carbon;
        if (ratio is { } r)
        {
            if (ingredient.RatioFixesCarbon)
            {
                // Plant matter holds at most 60 % carbon: beyond that the ratio is believed, not the nitrogen.
                value[C] = Math.Min(value[N] * r, PropertyFacts.HighestCarbon);
            }

            value[N] = value[C] / r;
        }

        if (
            double.IsNaN(value[N])
            || double.IsNaN(value[C])
            || double.IsNaN(value[(int)MaterialProperty.Moisture])
        )
        {
            throw new ArgumentException(
                ingredient.Name + ": nitrogen, carbon and moisture must be known",
                nameof(ingredient)
            );
        }

        if (double.IsNaN(value[(int)MaterialProperty.Ash]))
        {
            value[(int)MaterialProperty.Ash] = MixtureAssumptions.Ash(value[C]);
        }

        for (var p = (int)MaterialProperty.Lignin; p < value.Length; p++)
        {
            if (double.IsNaN(value[p]))
            {
                value[p] = MixtureAssumptions.Value((MaterialProperty)p);
            }
        }

        return ingredient.Unit.IsMass
            ? MassBalance.Of(size, double.NaN, value)
            : MassBalance.Of(double.NaN, size, value);
    }
}
