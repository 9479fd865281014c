using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.Core.Bins;
using Heapwright.Core.BuildPlans;
using Heapwright.Core.Mixtures;
using UnitsNet;

namespace Heapwright.App.Contract;

/// <summary>
/// Reads what is to be built: ingredients as in <c>mix</c>, a plan of <c>recipe</c>, or a whole answer of
/// <c>recipe</c>. What such an answer says besides the amounts is an answer, not a question: it is passed over and
/// worked out again.
/// </summary>
internal sealed class BuildReader(Assumptions assumptions)
{
    private static readonly string[] Asked =
    [
        "plan",
        "plans",
        "number",
        "ingredients",
        "use",
        "buy",
        "water_l",
        "bin",
        "volume_m3",
        "containers",
        "mixing_volume_factor",
        "seed",
        "schema",
        "name",
    ];

    /// <summary>The name the asker gave the heap, or null.</summary>
    public string? Name { get; private set; }

    /// <summary>The units of the question.</summary>
    public ImmutableArray<Ingredient> Ingredients { get; private set; } = [];

    /// <summary>Reads a question.</summary>
    /// <param name="input">The question.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public BuildQuestion Read(Input input)
    {
        var top = input.Fields([
            .. Asked,
            .. PlanReader.AnsweredByPlan,
            .. PlanReader.AnsweredByRecipe,
        ]);
        top["schema"]?.Whole(Json.Schema, Json.Schema);
        Name = top["name"]?.Text(80);
        var plan = PlanReader.PlanOf(top);
        var reader = new IngredientReader(
            LibraryReader.Library,
            ContainerReader.Read(PlanReader.Beside(top, "containers")),
            assumptions
        );
        Ingredients = [.. PlanReader.Entries(plan).Select(e => PlanReader.Entry(reader, e))];
        if (Ingredients.Length > MixAnswers.MostIngredients)
        {
            throw input.Problem(
                $"has {Ingredients.Length} ingredients; at most {MixAnswers.MostIngredients} are allowed"
            );
        }

        if (!Ingredients.Any(i => i.Amount.Typical > 0))
        {
            throw plan.Owner.Problem("every amount is 0; at least one above 0 is needed");
        }

        return new BuildQuestion
        {
            Ingredients = Ingredients,
            Water = plan["water_l"] is { } water
                ? Volume.FromLiters(water.Spread(0, 1_000_000).Typical)
                : null,
            Bin = BinOf(top),
            MixingVolumeFactor = (
                plan["mixing_volume_factor"] ?? top["mixing_volume_factor"]
            )?.Spread(0.3, 1.5),
            Seed = (ulong)(top["seed"]?.Whole(0, int.MaxValue) ?? 1),
        };
    }

    private Bin? BinOf(InputFields top)
    {
        if (PlanReader.Beside(top, "bin") is { } bin)
        {
            return BinReader.Read(bin);
        }

        if (top["volume_m3"] is not { } volume)
        {
            return null;
        }

        if (!volume.IsObject)
        {
            return BayOf(volume.Number(0.001, 10_000));
        }

        var fields = volume.Fields("low", "typical", "high");
        fields["low"]?.Number(0, 10_000);
        fields["typical"]?.Number(0.001, 10_000);
        return fields["high"] is { } high ? BayOf(high.Number(0.001, 10_000)) : null;
    }

    // Only the volume is known: a square bay, as high as wide up to 1.2 m.
    private Bin BayOf(double cubicMetres)
    {
        var height = Math.Clamp(Math.Cbrt(cubicMetres), 0.1, 1.2);
        var side = Math.Clamp(Math.Sqrt(cubicMetres / height), 0.1, 100);
        var (floor, up) = (Length.FromMeters(side), Length.FromMeters(height));
        assumptions.Say(
            "buildplans.bin_from_volume",
            assumptions.Measures.Heap(Volume.FromCubicMeters(cubicMetres)),
            floor,
            up
        );
        return Bin.Box(floor, floor, up);
    }
}
