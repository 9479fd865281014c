using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.App.Tests.Contract;

/// <summary>The command <c>build</c> as the contract has it; figures without a source are common practice.</summary>
public class BuildAnswersTests
{
    private const string Bay = """{"shape":"box","length_m":1.2,"width_m":1.2,"height_m":1.1}""";

    private const string Use = """
        {"material":"grass_clippings_fresh","name":"Grass clippings, fresh","amount":{"value":2,"unit":"wheelbarrow"},
         "l":{"low":1,"typical":2,"high":3},"kg":{"low":1,"typical":2,"high":3}},
        {"material":"leaves_mixed_dry","name":"Leaves","amount":{"value":4,"unit":"bag"},"l":300,"kg":24},
        {"material":"wood_chips_coarse","name":"Chips","amount":{"value":1,"unit":"wheelbarrow"},"l":85,"kg":25}
        """;

    private const string Buy =
        """{"material":"wheat_straw","name":"Straw","amount":{"value":1,"unit":"bale"},"l":420,"kg":21,"price":9.5}""";

    private const string Plan =
        """{"number":1,"use":["""
        + Use
        + """],"buy":["""
        + Buy
        + """],"water_l":60,"mixture":{},"chance_in_band":{"all":0.8},"cost":9.5,"expect":{"heats":"yes"},"proven_best":true,"notes":["n"]}""";

    [Fact]
    public void Answer_WholeRecipeAnswerAsPlan_IsThatOfItsFirstPlan()
    {
        const string Sizes = """{"wheelbarrow":{"l":85},"bag":{"l":70},"bale":{"l":400}}""";

        Assert.Equal(
            Ask($$"""{"plan":{{Plan}},"bin":{{Bay}},"containers":{{Sizes}} }""").ToJsonString(),
            Ask(
                    $$"""{"plan":{"schema":1,"seed":1,"status":"ok","bin":{{Bay}},"plans":[{{Plan}}],"containers":{{Sizes}},"shortfalls":[]} }"""
                )
                .ToJsonString()
        );
    }

    [Fact]
    public void Answer_WholeRecipeAnswer_BuildsItsFirstPlan()
    {
        var json = Ask(
            $$$"""
            {"schema":1,"seed":1,"status":"ok","aim":"use_most","chance":0.5,"bands":{},"volume_m3":{"low":null,"high":1.5},
             "bin":{{{Bay}}},"plans":[{{{Plan}}}],"shortfalls":[],"measure_next":[],"left_over":[],
             "containers":{"wheelbarrow":{"l":85,"assumed":true},"bag":{"l":{"low":45,"typical":75,"high":115},"assumed":true}},
             "assumptions":[],"cautions":[]}
            """
        );

        Assert.Equal(60, json["total_water_l"]!.GetValue<double>());
        Assert.Equal(2, Laid(json, "grass_clippings_fresh"), 9);
        Assert.Equal(4, Laid(json, "leaves_mixed_dry"), 9);
        Assert.Equal(1, Laid(json, "wheat_straw"), 9);
        // What the answer said of litres is worked out again: 2 barrows of 85 l.
        Assert.Equal(170, Sum(json, "grass_clippings_fresh", "l"), 9);
    }

    [Fact]
    public void Answer_PlanUseAndIngredients_AreTheSameHeap()
    {
        var recipe = Ask(
            $$"""{"plans":[{"use":[],"water_l":1},{{Plan}}],"number":2,"bin":{{Bay}} }"""
        );
        var plan = Ask($$"""{"plan":{{Plan}},"bin":{{Bay}} }""");
        var use = Ask($$"""{"use":[{{Use}}],"buy":[{{Buy}}],"water_l":60,"bin":{{Bay}} }""");
        var straw = Buy.Replace(",\"price\":9.5", "", StringComparison.Ordinal);
        var mix = Ask($$"""{"ingredients":[{{Use}},{{straw}}],"water_l":60,"bin":{{Bay}} }""");

        Assert.Equal(plan.ToJsonString(), recipe.ToJsonString());
        Assert.Equal(plan.ToJsonString(), use.ToJsonString());
        Assert.Equal(plan.ToJsonString(), mix.ToJsonString());
    }

    [Fact]
    public void Answer_Fields_AreThoseOfTheContract()
    {
        var json = Ask($$"""{"plan":{{Plan}},"bin":{{Bay}} }""");

        Assert.Equal(1, json["schema"]!.GetValue<int>());
        Assert.True(json["height_cm"]!.GetValue<double>() > 40);
        Assert.True(
            json["settled_height_cm"]!.GetValue<double>() < json["height_cm"]!.GetValue<double>()
        );
        Assert.True(
            json["minutes"]!.GetValue<double>() > json["minutes_two_people"]!.GetValue<double>()
        );
        Assert.NotEmpty(json["tools"]!.AsArray());
        Assert.NotEmpty(json["assumptions"]!.AsArray());
        Assert.Contains("legionella_dust", Ids(json));
        Assert.Contains("herbicide_residue", Ids(json));
        Assert.Contains("lifting_and_tools", Ids(json));
        var layers = json["layers"]!.AsArray();
        for (var i = 0; i < layers.Count; i++)
        {
            var layer = layers[i]!;
            Assert.Equal(i + 1, layer["number"]!.GetValue<int>());
            Assert.True(layer["thickness_cm"]!.GetValue<double>() > 0);
            Assert.True(layer["water_l"]!.GetValue<double>() >= 0);
            Assert.NotNull(layer["prepare"]!.GetValue<string>());
            Assert.NotEqual("", layer["why"]!.GetValue<string>());
        }

        Assert.Equal(
            json["height_cm"]!.GetValue<double>(),
            layers.Sum(l => l!["thickness_cm"]!.GetValue<double>()),
            1e-9
        );
        Assert.Equal(60, layers.Sum(l => l!["water_l"]!.GetValue<double>()), 1e-9);
    }

    [Theory]
    [InlineData("""{"bin":{"shape":"box"}}""", "nothing to build")]
    [InlineData("""{"plans":[]}""", "no plan")]
    [InlineData("""{"plans":[{"use":[]}],"number":2}""", "2 is out of range; 1 to 1")]
    [InlineData("""{"plan":{"water_l":3}}""", "\"use\" is missing")]
    [InlineData("""{"plan":{"use":[],"wter_l":3}}""", "nearest is \"water_l\"")]
    [InlineData(
        """{"ingredients":[{"material":"wheat_straw","amount":{"value":0,"unit":"bale"}}]}""",
        "every amount is 0"
    )]
    [InlineData(
        """{"ingredients":[{"material":"wheat_straw","amount":{"value":1,"unit":"pile"}}]}""",
        "\"pile\" has no size"
    )]
    [InlineData(
        """{"ingredients":[{"material":"wheat_straw","amount":{"value":1,"unit":"bale"}}],"water_l":-1}""",
        "-1 is out of range"
    )]
    [InlineData(
        """{"ingredients":[{"material":"wheat_straw","amount":{"value":1,"unit":"bale"}}],"bin":{"shape":"box","length_m":1}}""",
        "\"height_m\" is missing"
    )]
    [InlineData(
        """{"ingredients":[{"material":"wheat_straw","amount":{"value":900000,"unit":"bale"}}]}""",
        "at most 10000 m³"
    )]
    [InlineData(
        """{"ingredients":[{"name":"zzz","carbon_pct_db":40,"nitrogen_pct_db":1,"moisture_pct_wb":50,"amount":{"value":1,"unit":"kg"}}]}""",
        "bulk_density_kg_m3 is missing"
    )]
    [InlineData(
        """{"ingredients":[{"material":"wheat_straw","amount":{"value":1,"unit":"bale"}}],"use":[]}""",
        "both given"
    )]
    [InlineData("[]", "an object with")]
    public void Answer_BadInput_IsRefusedInOneSentence(string question, string says)
    {
        var problem = Assert.Throws<InputProblem>(() => Ask(question));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem.Message);
    }

    [Fact]
    public void Answer_OwnMaterialAndContainer_KeepsItsNameAndUnit()
    {
        var json = Ask(
            """
            {"ingredients":[{"name":"green stuff from next door","carbon_pct_db":42,"nitrogen_pct_db":2.1,
             "moisture_pct_wb":70,"bulk_density_kg_m3":180,"amount":{"value":3,"unit":"dumpy"}},
             {"material":"wheat_straw","amount":{"value":2,"unit":"dumpy"}}],"containers":{"dumpy":{"l":150,"heaped":true}},"water_l":20}
            """
        );

        Assert.Equal(
            3,
            json["layers"]!
                .AsArray()
                .SelectMany(l => l!["ingredients"]!.AsArray())
                .Where(p => p!["name"]!.GetValue<string>() == "green stuff from next door")
                .Sum(p => p!["amount"]!["value"]!.GetValue<double>()),
            1e-9
        );
        Assert.Equal(
            "dumpy",
            json["layers"]![0]!["ingredients"]![0]!["amount"]!["unit"]!.GetValue<string>()
        );
    }

    [Fact]
    public void Answer_NoWaterNamed_GivesSomeAndSaysSo()
    {
        var json = Ask($$"""{"use":[{{Use}}],"bin":{{Bay}} }""");

        Assert.True(json["total_water_l"]!.GetValue<double>() > 1);
        Assert.Contains(
            json["assumptions"]!.AsArray(),
            a => a!.GetValue<string>().StartsWith("No water was given", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Text_OfAPlan_NamesEveryLayerAndWhatComesFirst()
    {
        var answer = BuildAnswers.Answer(Question($$"""{"plan":{{Plan}},"bin":{{Bay}} }"""));

        Assert.Contains("Before you start", answer.Text, StringComparison.Ordinal);
        var soak = answer
            .Text.Split('\n')
            .Single(l => l.Contains("Soak first", StringComparison.Ordinal));
        Assert.Contains("Leaves", soak, StringComparison.Ordinal);
        Assert.Contains("Straw", soak, StringComparison.Ordinal);
        Assert.Contains("1 wheelbarrow Chips", answer.Text, StringComparison.Ordinal);
    }

    internal static Input Question(string json) => Input.Read(Encoding.UTF8.GetBytes(json), "test");

    private static JsonObject Ask(string json) => BuildAnswers.Answer(Question(json)).Json;

    private static IEnumerable<string> Ids(JsonObject json) =>
        json["cautions"]!.AsArray().Select(c => c!["id"]!.GetValue<string>());

    private static IEnumerable<JsonNode> Parts(JsonObject json, string material) =>
        json["layers"]!
            .AsArray()
            .SelectMany(l => l!["ingredients"]!.AsArray())
            .Where(p => p!["material"]!.GetValue<string>() == material)!;

    private static double Laid(JsonObject json, string material) =>
        Parts(json, material).Sum(p => p["amount"]!["value"]!.GetValue<double>());

    private static double Sum(JsonObject json, string material, string field) =>
        Parts(json, material).Sum(p => p[field]!.GetValue<double>());
}
