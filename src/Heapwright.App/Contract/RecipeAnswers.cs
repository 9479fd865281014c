using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Reasons;
using Heapwright.Core.Recipes;

namespace Heapwright.App.Contract;

/// <summary>Answers <c>recipe</c>: what to build from what is there, and the little to buy.</summary>
public static class RecipeAnswers
{
    /// <summary>Answers a question.</summary>
    /// <param name="input">The question.</param>
    /// <param name="seed">The seed where the question names none.</param>
    /// <param name="measures">The measures of its sentences and its text; metric if null.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static Answer Answer(Input input, ulong? seed = null, Measures? measures = null)
    {
        var fields = input.Fields(
            "have",
            "can_buy",
            "bin",
            "volume_m3",
            "weather",
            "aim",
            "chance",
            "containers",
            "bands",
            "mixing_volume_factor",
            "onto",
            EarlierReader.Field,
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
        var question = RecipeReader.Read(fields, reader, assumptions, seed, out var leftOut);
        var answer = RecipePlanner.Plan(question, FetchFirstReader.Table);
        answer = answer with
        {
            Plans = [.. answer.Plans.Select(p => p with { Notes = [.. leftOut, .. p.Notes] })],
        };
        foreach (var reason in leftOut)
        {
            assumptions.Say(reason);
        }

        if (answer.Plans.Length > 0)
        {
            MixAnswers.SayMixing(
                answer.Plans[0].Mixture.Question with
                {
                    MixingVolumeFactor = question.MixingVolumeFactor,
                },
                assumptions
            );
        }

        assumptions.Say("recipes.expect_rule");
        var json = ToJson(question, answer, assumptions.Measures);
        json["containers"] = ContainerReader.Sizes(question.Items.Select(i => i.Ingredient.Unit));
        json["assumptions"] = assumptions.ToJson();
        var cautions = MaterialCautions.Of(
            question.Items.Select(i => i.Ingredient.Material),
            "legionella_dust"
        );
        json["cautions"] = cautions;
        return new Answer(
            json,
            answer.Status == RecipeStatus.Ok,
            RecipeText.Of(question, answer, assumptions, cautions)
        );
    }

    private static JsonObject ToJson(
        RecipeQuestion question,
        RecipeAnswer answer,
        Measures measures
    ) =>
        new()
        {
            ["schema"] = Json.Schema,
            ["seed"] = question.Seed,
            ["status"] = answer.Status switch
            {
                RecipeStatus.Ok => "ok",
                RecipeStatus.FallsShort => "falls_short",
                _ => "cannot",
            },
            ["aim"] = RecipeReader.AimWord(question.Aim),
            ["chance"] = question.Chance,
            ["bands"] = BandsJson(answer.Bands),
            ["volume_m3"] = new JsonObject
            {
                ["low"] = Json.Of(question.LeastVolume / 1000),
                ["high"] = Json.Of((question.MostVolume ?? question.Bin?.Volume.Liters) / 1000),
            },
            ["bin"] = question.Bin is { } bin ? BinReader.ToJson(bin) : null,
            ["plans"] = new JsonArray([.. answer.Plans.Select((p, i) => PlanJson(p, i, measures))]),
            ["shortfalls"] = new JsonArray([
                .. answer.Shortfalls.Select(s => ShortfallJson(s, measures)),
            ]),
            ["measure_next"] = new JsonArray([
                .. answer.MeasureNext.Select(m => new JsonObject
                {
                    ["material"] = m.Ingredient.Material?.Id ?? m.Ingredient.Name,
                    ["name"] = m.Ingredient.Name,
                    ["measure"] = m.Measure,
                    ["chance_gain"] = m.ChanceGain,
                    ["how"] = Words.Of("recipes.how_" + m.Measure),
                    ["why"] = measures.Say(m.Why),
                }),
            ]),
            ["left_over"] = new JsonArray([
                .. answer.LeftOver.Select(l =>
                {
                    var json = AmountJson(l, Exact(l.Matter));
                    json["spoils_in_days"] = Json.Of(l.Item.SpoilsInDays);
                    return json;
                }),
            ]),
        };

    private static JsonNode PlanJson(RecipePlan plan, int index, Measures measures)
    {
        var mixture = new JsonObject();
        foreach (var (field, node) in MixAnswers.Describe(plan.Mixture))
        {
            mixture[field] = node;
        }

        return new JsonObject
        {
            ["number"] = index + 1,
            ["use"] = new JsonArray([.. plan.Use.Select(u => AmountJson(u, Range(plan, u)))]),
            ["buy"] = new JsonArray([.. plan.Buy.Select(u => AmountJson(u, Range(plan, u)))]),
            ["water_l"] = plan.Water,
            ["mixture"] = mixture,
            ["chance_in_band"] = new JsonObject
            {
                ["carbon_nitrogen_ratio"] = Json.Of(plan.Chance.CarbonNitrogen),
                ["moisture_pct_wb"] = Json.Of(plan.Chance.Moisture),
                ["free_air_space_pct"] = Json.Of(plan.Chance.Air),
                ["all"] = plan.Chance.All,
            },
            ["cost"] = plan.Cost,
            ["expect"] = new JsonObject
            {
                ["heats"] = HeatsWord(plan.Expect.Heats),
                ["chance_hot"] = plan.Expect.ChanceHot,
                ["over_65_c_likely"] = plan.Expect.Over65Likely,
                ["ammonia_likely"] = plan.Expect.AmmoniaLikely,
                ["first_55_c_day"] = Json.Of(plan.Expect.First55Day),
            },
            ["proven_best"] = plan.ProvenBest,
            ["notes"] = Json.Of(plan.Notes.Select(measures.Say)),
        };
    }

    internal static string HeatsWord(Heats heats) =>
        heats switch
        {
            Heats.Yes => "yes",
            Heats.Modest => "modest",
            _ => "no",
        };

    private static (JsonNode? Kg, JsonNode? Litres) Range(RecipePlan plan, PlannedAmount amount)
    {
        var part = plan.Mixture.Parts.First(p =>
            p.Ingredient.Amount.Typical == amount.Amount
            && p.Ingredient.Unit == amount.Item.Ingredient.Unit
            && string.Equals(
                p.Ingredient.Name,
                amount.Item.Ingredient.Name,
                StringComparison.Ordinal
            )
        );
        return (
            Json.Of(MixAnswers.Total(part, b => b.WetMass)),
            Json.Of(MixAnswers.Total(part, b => b.LooseVolume))
        );
    }

    private static (JsonNode? Kg, JsonNode? Litres) Exact(MassBalance matter) =>
        (Json.Of(matter.WetMass), Json.Of(matter.LooseVolume));

    private static JsonObject AmountJson(
        PlannedAmount planned,
        (JsonNode? Kg, JsonNode? Litres) size
    )
    {
        var ingredient = planned.Item.Ingredient;
        var json = new JsonObject
        {
            ["material"] = ingredient.Material?.Id,
            ["name"] = ingredient.Name,
            ["amount"] = new JsonObject
            {
                ["value"] = planned.Amount,
                ["unit"] = ingredient.Unit.Unit,
            },
            ["l"] = size.Litres,
            ["kg"] = size.Kg,
        };
        // What the asker said of it goes with it, so that the plan can be asked about as it stands.
        foreach (var property in PropertyFacts.All)
        {
            var own = ingredient.Properties[property];
            if (
                own is not null
                && own != ingredient.Material?.Properties[property]
                && IngredientReader.MaterialFields.Contains(PropertyFacts.FieldName(property))
            )
            {
                json[PropertyFacts.FieldName(property)] = Json.Plain(own.Value);
            }
        }

        if (ingredient.Ratio is { } ratio)
        {
            json["carbon_nitrogen_ratio"] = Json.Plain(ratio);
            json.Remove(
                PropertyFacts.FieldName(
                    ingredient.RatioFixesCarbon
                        ? MaterialProperty.Carbon
                        : MaterialProperty.Nitrogen
                )
            );
        }

        return json;
    }

    private static JsonNode ShortfallJson(Shortfall shortfall, Measures measures) =>
        new JsonObject
        {
            ["what"] = shortfall.What,
            ["missing"] = shortfall.Missing,
            ["unit"] = shortfall.Unit,
            ["options"] = new JsonArray([
                .. shortfall.Options.Select(o => new JsonObject
                {
                    ["material"] = o.Material.Id,
                    ["name"] = o.Material.Name,
                    ["l"] = o.Litres,
                    ["text"] = OptionText(o, measures),
                }),
            ]),
        };

    internal static string OptionText(ShortfallOption option, Measures measures)
    {
        var barrows =
            Math.Ceiling(2 * option.Litres / UsualContainers.Set.Find("wheelbarrow")!.Size.Typical)
            / 2;
        var buckets = Math.Ceiling(
            option.Litres / UsualContainers.Set.Find("bucket")!.Size.Typical
        );
        var (code, count) =
            barrows > 1 ? ("barrows", barrows)
            : barrows == 1 ? ("barrow", barrows)
            : buckets > 1 ? ("buckets", buckets)
            : ("bucket", buckets);
        return measures.Say(
            Reason.Of(
                "recipes.option_" + code,
                count,
                option.Material.Name,
                UnitsNet.Volume.FromLiters(option.Litres)
            )
        );
    }

    private static JsonObject BandsJson(Bands bands) =>
        new()
        {
            ["carbon_nitrogen_ratio"] = BandJson(bands.CarbonNitrogen),
            ["moisture_pct_wb"] = BandJson(bands.Moisture),
            ["free_air_space_pct"] = BandJson(bands.Air),
            ["judged"] = Words.Of(
                bands.AnyCondition ? "recipes.judged_conditions" : "recipes.judged_aims"
            ),
        };

    private static JsonNode? BandJson(Band? band) =>
        band is null
            ? null
            : new JsonObject
            {
                ["low"] = Json.Of(band.Low),
                ["high"] = Json.Of(band.High),
                ["condition"] = band.IsCondition,
            };
}
