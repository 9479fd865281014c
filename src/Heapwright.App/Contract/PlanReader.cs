using Heapwright.Core.Mixtures;

namespace Heapwright.App.Contract;

/// <summary>
/// Finds the amounts in a plan of <c>recipe</c> or in a whole answer of it. What such an answer says besides the amounts
/// is an answer, not a question: it is passed over and worked out again.
/// </summary>
internal static class PlanReader
{
    /// <summary>What an answer says of a plan besides the amounts.</summary>
    public static readonly string[] AnsweredByPlan =
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

    /// <summary>What an answer of <c>recipe</c> says besides its plans.</summary>
    public static readonly string[] AnsweredByRecipe =
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

    /// <summary>The object in which the amounts stand: the question itself, its plan, or one of the plans of an answer.</summary>
    /// <param name="top">The question.</param>
    public static InputFields PlanOf(InputFields top)
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
            return plan.Has("plans")
                ? Chosen(Answered(plan)["plans"]!, top["number"])
                : Inner(plan);
        }

        if (top["plans"] is { } plans)
        {
            return Chosen(plans, top["number"]);
        }

        if (given.Count == 0)
        {
            throw top.Owner.Problem(
                "nothing to build was found; \"ingredients\", a \"plan\" of a recipe, or the answer of a recipe is needed"
            );
        }

        return top;
    }

    /// <summary>A field of the question, or of the whole answer of recipe that stands in the place of its plan.</summary>
    /// <param name="top">The question.</param>
    /// <param name="name">The field.</param>
    public static Input? Beside(InputFields top, string name) =>
        top[name] ?? (top["plan"] is { } plan && plan.Has("plans") ? Answered(plan)[name] : null);

    private static InputFields Chosen(Input plans, Input? number)
    {
        var items = plans.Items(0, 20);
        if (items.Count == 0)
        {
            throw plans.Problem("the recipe holds no plan, so there is nothing to build");
        }

        return Inner(items[(number?.Whole(1, items.Count) ?? 1) - 1]);
    }

    // A whole answer of recipe in the place of one of its plans.
    private static InputFields Answered(Input answer) =>
        answer.Fields([
            "schema",
            "seed",
            "plans",
            "bin",
            "volume_m3",
            "containers",
            .. AnsweredByRecipe,
            .. AnsweredByPlan,
        ]);

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

    /// <summary>The entries with the amounts.</summary>
    /// <param name="plan">See <see cref="PlanOf"/>.</param>
    public static IEnumerable<Input> Entries(InputFields plan)
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

    /// <summary>One entry; what an answer says of it besides the amount is passed over.</summary>
    /// <param name="reader">Reads materials.</param>
    /// <param name="entry">The entry.</param>
    public static Ingredient Entry(IngredientReader reader, Input entry)
    {
        var fields = entry.Fields([
            .. IngredientReader.MaterialFields,
            "amount",
            .. AnsweredByEntry,
        ]);
        return reader.Read(fields, MaterialNeeds.Balance | MaterialNeeds.Volume);
    }
}
