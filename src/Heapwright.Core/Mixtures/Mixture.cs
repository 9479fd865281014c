using System.Collections.Immutable;
using Heapwright.Core.Quantities;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Mixtures;

/// <summary>
/// A mixture under uncertainty: the mass balance of its ingredients at every point of one sample set. Ratios are
/// never averaged; kilograms are added, then divided.
/// </summary>
public sealed class Mixture
{
    private Mixture(
        MixtureQuestion question,
        ImmutableArray<IngredientSample> parts,
        MixtureState[] cases,
        MixtureState typical
    )
    {
        Question = question;
        Parts = parts;
        Cases = cases;
        Typical = typical;
    }

    /// <summary>What was asked.</summary>
    public MixtureQuestion Question { get; }

    /// <summary>The ingredients drawn, in the asker's order.</summary>
    public ImmutableArray<IngredientSample> Parts { get; }

    /// <summary>Shape [point]: the mixture in every case; one case if everything is exact.</summary>
    public IReadOnlyList<MixtureState> Cases { get; }

    /// <summary>The mixture with everything at its typical value.</summary>
    public MixtureState Typical { get; }

    /// <summary>Works out a mixture.</summary>
    /// <param name="question">What is mixed.</param>
    /// <exception cref="ArgumentException">No ingredient has an amount above 0, or a property needed is missing.</exception>
    public static Mixture Of(MixtureQuestion question) => Of(question, default, []);

    /// <summary>Works out a mixture that is laid onto matter which is there already.</summary>
    /// <param name="question">What is mixed in.</param>
    /// <param name="there">What is there, at the typical values.</param>
    /// <param name="thereCases">Shape [point]: what is there in every case; empty for nothing.</param>
    internal static Mixture Of(
        MixtureQuestion question,
        MassBalance there,
        IReadOnlyList<MassBalance> thereCases
    )
    {
        ArgumentNullException.ThrowIfNull(question);
        if (thereCases.Count == 0 && !question.Ingredients.Any(i => i.Amount.High > 0))
        {
            throw new ArgumentException(
                "at least one ingredient must have an amount above 0",
                nameof(question)
            );
        }

        var points = new QuasiRandomSet(
            question.IsExact && thereCases.Count < 2 ? 1 : question.PointCount,
            question.Seed
        );
        ImmutableArray<IngredientSample> parts =
        [
            .. question.Ingredients.Select(i => IngredientSample.Draw(i, points)),
        ];
        var block = points.Block("mixture");
        var u = new double[points.Count];
        block.Fill(0, u);
        var water = question.Water.Sample(u, SpreadScale.Positive);
        block.Fill(1, u);
        var factor = FactorOf(question);
        var factors = factor.Sample(u, SpreadScale.Positive);

        // Floating-point sums depend on their order; a fixed one keeps the answer free of the order of the list.
        var order = parts
            .Where(p => p.Ingredient.Amount.High > 0)
            .OrderBy(p => p.Ingredient.Key, StringComparer.Ordinal)
            .ThenBy(p => p.Ingredient.Amount.Typical)
            .ThenBy(p => p.Typical.WetMass)
            .ThenBy(p => p.Typical.DryMass)
            .ThenBy(p => p.Typical.Carbon)
            .ThenBy(p => p.Typical.Nitrogen)
            .ThenBy(p => p.Typical.LooseVolume)
            .ThenBy(p => p.Ingredient.Unit.Unit, StringComparer.Ordinal)
            .ToArray();
        var cases = new MixtureState[points.Count];
        for (var i = 0; i < cases.Length; i++)
        {
            var sum = thereCases.Count > 0 ? thereCases[i] : default;
            foreach (var part in order)
            {
                sum += part.PerUnit[i] * part.Amount[i];
            }

            cases[i] = new MixtureState(sum.WithWater(water[i]), sum.LooseVolume * factors[i]);
        }

        var middle = there;
        foreach (var part in order)
        {
            middle += part.Typical * part.Ingredient.Amount.Typical;
        }

        var typical = new MixtureState(
            middle.WithWater(question.Water.Typical),
            middle.LooseVolume * factor.Typical
        );
        return new Mixture(question, parts, cases, typical);
    }

    /// <summary>A quantity of the mixture as a distribution; null where it is not known or not finite.</summary>
    /// <param name="quantity">Takes it from one case.</param>
    public Spread? Quantity(Func<MixtureState, double> quantity)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        var values = new double[Cases.Count];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = quantity(Cases[i]);
            if (!double.IsFinite(values[i]))
            {
                return null;
            }
        }

        return Spread.OfSample(values);
    }

    /// <summary>The share of cases in which something holds, 0 to 1.</summary>
    /// <param name="holds">Whether it holds in one case.</param>
    public double Chance(Func<MixtureState, bool> holds) =>
        (double)Cases.Count(holds) / Cases.Count;

    /// <summary>
    /// The factor from loose sum to filled volume: the asker's; 1 for one stuff alone; otherwise the usual one,
    /// exact where everything else is.
    /// </summary>
    /// <param name="question">What is mixed.</param>
    public static Spread FactorOf(MixtureQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (question.MixingVolumeFactor is { } given)
        {
            return given;
        }

        if (!question.IsMixed)
        {
            return Spread.Exact(1);
        }

        return question.IsExact
            ? Spread.Exact(MixtureAssumptions.MixingVolumeFactor.Typical)
            : MixtureAssumptions.MixingVolumeFactor;
    }
}
