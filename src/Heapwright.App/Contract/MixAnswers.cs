using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>Answers <c>mix</c>: what a mixture is, and how sure we are.</summary>
public static class MixAnswers
{
    /// <summary>The most ingredients in one question.</summary>
    public const int MostIngredients = 60;

    private static readonly (string Field, Func<MixtureState, double> Quantity)[] Quantities =
    [
        ("carbon_nitrogen_ratio", s => s.CarbonNitrogenRatio),
        ("available_carbon_nitrogen_ratio", s => s.AvailableCarbonNitrogenRatio),
        ("moisture_pct_wb", s => s.Moisture),
        ("bulk_density_kg_m3", s => s.BulkDensity),
        ("free_air_space_pct", s => s.FreeAirSpace),
        ("free_air_space_settled_pct", s => s.FreeAirSpaceSettled),
        ("stiff_share_pct", s => s.StiffShare),
        ("wet_mass_kg", s => s.Matter.WetMass),
        ("dry_mass_kg", s => s.Matter.DryMass),
        ("water_kg", s => s.Matter.Water),
        ("carbon_kg", s => s.Matter.Carbon),
        ("nitrogen_kg", s => s.Matter.Nitrogen),
        ("phosphorus_kg", s => s.Matter.Phosphorus),
        ("potassium_kg", s => s.Matter.Potassium),
        ("volume_l", s => s.Matter.LooseVolume),
        ("filled_volume_l", s => s.FilledVolume),
    ];

    /// <summary>Answers a question.</summary>
    /// <param name="input">The question.</param>
    /// <param name="seed">The seed where the question names none.</param>
    /// <param name="measures">The measures of its sentences and its text; metric if null.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static Answer Answer(Input input, ulong? seed = null, Measures? measures = null)
    {
        var fields = input.Fields(
            "ingredients",
            "water_l",
            "containers",
            "mixing_volume_factor",
            "seed",
            "schema"
        );
        fields["schema"]?.Whole(Json.Schema, Json.Schema);
        var assumptions = new Assumptions(measures ?? Measures.Metric);
        var reader = new IngredientReader(
            LibraryReader.Library,
            ContainerReader.Read(fields["containers"]),
            assumptions
        );
        ImmutableArray<Ingredient> ingredients =
        [
            .. fields
                .Needed("ingredients")
                .Items(1, MostIngredients)
                .Select(i => reader.Read(i, MaterialNeeds.Balance)),
        ];
        if (!ingredients.Any(i => i.Amount.High > 0))
        {
            throw fields
                .Needed("ingredients")
                .Problem("every amount is 0; at least one above 0 is needed");
        }

        var question = new MixtureQuestion
        {
            Ingredients = ingredients,
            Water = fields["water_l"]?.Spread(0, 1_000_000) ?? Spread.Exact(0),
            MixingVolumeFactor = fields["mixing_volume_factor"]?.Spread(0.3, 1.5),
            Seed = fields["seed"] is { } own ? (ulong)own.Whole(0, int.MaxValue) : seed ?? 1,
        };
        var mixture = Mixture.Of(question);
        SayMixing(question, assumptions);

        var answer = new JsonObject { ["schema"] = Json.Schema, ["seed"] = question.Seed };
        foreach (var (field, node) in Describe(mixture))
        {
            answer[field] = node;
        }

        answer["ingredients"] = new JsonArray([.. mixture.Parts.Select(Part)]);
        answer["containers"] = ContainerReader.Sizes(ingredients.Select(i => i.Unit));
        answer["notes"] = Json.Of(RuleOfThumb.Notes(mixture).Select(assumptions.Measures.Say));
        answer["assumptions"] = assumptions.ToJson();
        var cautions = MaterialCautions.Of(ingredients.Select(i => i.Material));
        answer["cautions"] = cautions;
        return new Answer(answer, Yes: true, MixText.Of(mixture, assumptions, cautions));
    }

    /// <summary>The quantities and verdicts of a mixture, field by field.</summary>
    /// <param name="mixture">The mixture.</param>
    internal static IEnumerable<(string Field, JsonNode? Value)> Describe(Mixture mixture)
    {
        foreach (var (field, quantity) in Quantities)
        {
            yield return (field, Json.Of(mixture.Quantity(quantity)));
        }

        yield return ("verdicts", new JsonArray([.. Verdict.On(mixture).Select(VerdictJson)]));
    }

    /// <summary>Says how the filled volume was found, where the asker did not say it.</summary>
    internal static void SayMixing(MixtureQuestion question, Assumptions assumptions)
    {
        var factor = Mixture.FactorOf(question);
        if (question.MixingVolumeFactor is not null || !question.IsMixed)
        {
            return;
        }

        if (factor.IsExact)
        {
            assumptions.Say("mixtures.mixing_factor_exact", factor.Typical);
        }
        else
        {
            assumptions.Say("mixtures.mixing_factor", factor.Low, factor.High);
        }
    }

    private static JsonNode VerdictJson(Verdict verdict) =>
        new JsonObject
        {
            ["quantity"] = verdict.Aim.Quantity,
            ["value"] = Json.Of(verdict.Value),
            ["low"] = Json.Of(verdict.Aim.Low),
            ["high"] = Json.Of(verdict.Aim.High),
            ["status"] = StatusWord(verdict.Status),
            ["chance_good"] = verdict.ChanceGood,
            ["why"] = Words.Of(verdict.Why),
            ["source"] = verdict.Aim.Source,
        };

    internal static string StatusWord(VerdictStatus status) =>
        status switch
        {
            VerdictStatus.Good => "good",
            VerdictStatus.Low => "low",
            VerdictStatus.High => "high",
            _ => "uncertain",
        };

    private static JsonNode Part(IngredientSample part)
    {
        var ingredient = part.Ingredient;
        return new JsonObject
        {
            ["name"] = ingredient.Name,
            ["material"] = ingredient.Material?.Id,
            ["amount"] = new JsonObject
            {
                ["value"] = Json.Plain(ingredient.Amount),
                ["unit"] = ingredient.Unit.Unit,
            },
            ["kg"] = Json.Of(Total(part, b => b.WetMass)),
            ["l"] = Json.Of(Total(part, b => b.LooseVolume)),
        };
    }

    internal static Spread? Total(IngredientSample part, Func<MassBalance, double> quantity)
    {
        var values = new double[part.PerUnit.Count];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = quantity(part.PerUnit[i]) * part.Amount[i];
            if (!double.IsFinite(values[i]))
            {
                return null;
            }
        }

        return Spread.OfSample(values);
    }
}
