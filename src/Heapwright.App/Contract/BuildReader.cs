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

    private static readonly string[] AnsweredByPlan =
    [
        "mixture",
        "chance_in_band",
        "cost",
        "expect",
        "proven_best",
        "notes",
        "kind",
        "why",
        "left_over",
        "minutes",
        "assumptions",
        "cautions",
    ];

    private static readonly string[] AnsweredByRecipe =
    [
        "status",
        "shortfalls",
        "measure_next",
        "aim",
        "aims",
        "bands",
        "chance",
        "weather",
        "onto",
    ];

    private static readonly string[] AnsweredByEntry =
    [
        "l",
        "kg",
        "price",
        "cost",
        "share",
        "must_use",
        "whole_units",
        "spoils_in_days",
        "prepare",
        "notes",
        "note",
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
        var top = input.Fields([.. Asked, .. AnsweredByPlan, .. AnsweredByRecipe]);
        top["schema"]?.Whole(Json.Schema, Json.Schema);
        Name = top["name"]?.Text(80);
        var plan = PlanOf(top);
        var reader = new IngredientReader(
            LibraryReader.Library,
            ContainerReader.Read(top["containers"]),
            assumptions
        );
        Ingredients = [.. Entries(plan).Select(e => Entry(reader, e))];
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

    // The object in which the amounts stand: the question itself, its plan, or one of the plans of an answer.
    private static InputFields PlanOf(InputFields top)
    {
        string[] places = ["plan", "plans", "ingredients"];
        var given = places.Where(p => top[p] is not null).ToList();
        if (top["use"] is not null || top["buy"] is not null)
        {
            given.Add(top["use"] is not null ? "use" : "buy");
        }

        if (given.Count > 1)
        {
            throw top.Owner.Problem(
                $"\"{given[0]}\" and \"{given[1]}\" were both given; one of the two is allowed"
            );
        }

        if (top["plan"] is { } plan)
        {
            return Inner(plan);
        }

        if (top["plans"] is { } plans)
        {
            var items = plans.Items(0, 20);
            if (items.Count == 0)
            {
                throw plans.Problem("the recipe holds no plan, so there is nothing to build");
            }

            return Inner(items[(top["number"]?.Whole(1, items.Count) ?? 1) - 1]);
        }

        if (given.Count == 0)
        {
            throw top.Owner.Problem(
                "nothing to build was found; \"ingredients\", a \"plan\" of a recipe, or the answer of a recipe is needed"
            );
        }

        return top;
    }

    private static InputFields Inner(Input plan)
    {
        var fields = plan.Fields([
            "ingredients",
            "use",
            "buy",
            "water_l",
            "mixing_volume_factor",
            "number",
            "name",
            .. AnsweredByPlan,
        ]);
        if (fields["use"] is null && fields["buy"] is null && fields["ingredients"] is null)
        {
            throw plan.Problem("the field \"use\" is missing; it is needed");
        }

        return fields;
    }

    private static IEnumerable<Input> Entries(InputFields plan)
    {
        foreach (var name in new[] { "ingredients", "use", "buy" })
        {
            if (plan[name] is { } list)
            {
                var fewest = name == "ingredients" ? 1 : 0;
                foreach (var entry in list.Items(fewest, MixAnswers.MostIngredients))
                {
                    yield return entry;
                }
            }
        }
    }

    private static Ingredient Entry(IngredientReader reader, Input entry)
    {
        var fields = entry.Fields([
            .. IngredientReader.MaterialFields,
            "amount",
            .. AnsweredByEntry,
        ]);
        return reader.Read(fields, MaterialNeeds.Balance | MaterialNeeds.Volume);
    }

    private Bin? BinOf(InputFields top)
    {
        if (top["bin"] is { } bin)
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
