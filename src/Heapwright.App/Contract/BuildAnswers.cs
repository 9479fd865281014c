using System.Text.Json.Nodes;
using Heapwright.App.BuildSheets;
using Heapwright.App.Texts;
using Heapwright.Core.BuildPlans;

namespace Heapwright.App.Contract;

/// <summary>Answers <c>build</c>: how to build a heap, layer by layer from the ground up.</summary>
public static class BuildAnswers
{
    /// <summary>The most stuff that is planned layer by layer, m³: the largest floor, as high as a fork reaches.</summary>
    private const double MostCubicMetres = 10_000;

    /// <summary>Answers a question.</summary>
    /// <param name="input">The question.</param>
    /// <param name="measures">The measures of its sentences and its text; metric if null.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static Answer Answer(Input input, Measures? measures = null)
    {
        var (sheet, cautions) = Read(input, measures ?? Measures.Metric);
        return new Answer(ToJson(sheet, cautions), Yes: true, BuildText.Of(sheet));
    }

    /// <summary>The sheet a question leads to, for drawing.</summary>
    /// <param name="input">The question.</param>
    /// <param name="measures">The measures to show it in; metric if null.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static BuildSheet Sheet(Input input, Measures? measures = null) =>
        Read(input, measures ?? Measures.Metric).Sheet;

    private static (BuildSheet Sheet, JsonArray Cautions) Read(Input input, Measures measures)
    {
        var assumptions = new Assumptions(measures);
        var reader = new BuildReader(assumptions);
        var question = reader.Read(input);
        var loose = question.Ingredients.Sum(CubicMetres);
        if (loose > MostCubicMetres)
        {
            throw input.Problem(
                string.Create(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"the ingredients come to {loose:0} m³; at most {MostCubicMetres:0} m³ are planned at a time"
                )
            );
        }

        var plan = BuildPlan.Of(question);
        assumptions.Say("buildplans.built_factor", plan.BuiltFactor);
        foreach (var reason in plan.Assumptions)
        {
            assumptions.Add(measures.Say(reason));
        }

        var cautions = MaterialCautions.Of(
            reader.Ingredients.Where(i => i.Amount.Typical > 0).Select(i => i.Material),
            "legionella_dust"
        );
        cautions.Add(
            (JsonNode)
                new JsonObject
                {
                    ["id"] = "lifting_and_tools",
                    ["text"] = Words.Of("buildplans.lifting_and_tools_text"),
                    ["why"] = Words.Of("buildplans.lifting_and_tools_why"),
                    ["materials"] = new JsonArray(),
                }
        );
        var sheet = new BuildSheet(
            plan,
            [.. assumptions.All],
            [.. cautions.OfType<JsonObject>().Select(CautionOf)]
        )
        {
            Name = reader.Name,
            Measures = measures,
        };
        return (sheet, cautions);
    }

    private static double CubicMetres(Core.Mixtures.Ingredient ingredient)
    {
        var size = ingredient.Unit.Size.Typical * ingredient.Amount.Typical / 1000;
        var density = ingredient.Properties[Core.Materials.MaterialProperty.BulkDensity];
        return ingredient.Unit.IsMass ? size * 1000 / density!.Value.Typical : size;
    }

    private static SheetCaution CautionOf(JsonObject caution) =>
        new(
            caution["id"]!.GetValue<string>(),
            caution["text"]!.GetValue<string>(),
            caution["why"]!.GetValue<string>()
        );

    private static JsonObject ToJson(BuildSheet sheet, JsonArray cautions)
    {
        var plan = sheet.Plan;
        var answer = new JsonObject { ["schema"] = Json.Schema, ["seed"] = plan.Question.Seed };
        if (sheet.Name is { } name)
        {
            answer["name"] = name;
        }

        answer["layers"] = new JsonArray([.. plan.Layers.Select(l => Layer(l, sheet.Measures))]);
        answer["height_cm"] = plan.Height.Centimeters;
        answer["two_day_height_cm"] = plan.TwoDayHeight.Centimeters;
        answer["settled_height_cm"] = plan.SettledHeight.Centimeters;
        answer["total_water_l"] = plan.Water.Liters;
        answer["minutes"] = plan.OnePerson.TotalMinutes;
        answer["minutes_two_people"] = plan.TwoPeople.TotalMinutes;
        answer["tools"] = Json.Of(plan.Tools.Select(SheetWords.Tool));
        answer["place"] = Json.Of(plan.Place.Select(SheetWords.Place));
        answer["notes"] = Json.Of(plan.Notes.Select(sheet.Measures.Say));
        answer["left_over"] = new JsonArray([.. plan.LeftOver.Select(Part)]);
        answer["bin"] = BinReader.ToJson(plan.Bin);
        answer["scraps_margin_cm"] = Json.Of(plan.ScrapsMargin?.Centimeters);
        answer["containers"] = ContainerReader.Sizes(plan.Question.Ingredients.Select(i => i.Unit));
        var mixture = new JsonObject();
        foreach (var (field, value) in MixAnswers.Describe(plan.Mixture))
        {
            mixture[field] = value;
        }

        answer["mixture"] = mixture;
        answer["assumptions"] = Json.Of(sheet.Assumptions);
        answer["cautions"] = cautions;
        return answer;
    }

    private static JsonNode Layer(BuildLayer layer, Measures measures) =>
        new JsonObject
        {
            ["number"] = layer.Number,
            ["role"] = RoleWord(layer.Role),
            ["ingredients"] = new JsonArray([.. layer.Parts.Select(Part)]),
            ["thickness_cm"] = layer.Thickness.Centimeters,
            ["water_l"] = layer.Water.Liters,
            ["prepare"] = SheetWords.Prepare(layer),
            ["then"] = SheetWords.Then(layer),
            ["fork_with"] = layer.ForkWith,
            ["why"] = measures.Say(layer.Why),
        };

    private static JsonNode Part(LayerPart part) =>
        new JsonObject
        {
            ["material"] = part.Ingredient.Material?.Id,
            ["name"] = part.Ingredient.Name,
            ["amount"] = new JsonObject
            {
                ["value"] = part.Amount,
                ["unit"] = part.Ingredient.Unit.Unit,
            },
            ["l"] = part.Loose.Liters,
            ["kg"] = part.Mass.Kilograms,
            ["in_middle"] = part.InMiddle,
        };

    private static string RoleWord(LayerRole role) =>
        role switch
        {
            LayerRole.Base => "base",
            LayerRole.Soil => "soil",
            LayerRole.Brown => "brown",
            LayerRole.Green => "green",
            LayerRole.Pair => "pair",
            LayerRole.Kitchen => "kitchen",
            LayerRole.Alone => "alone",
            _ => "cover",
        };
}
