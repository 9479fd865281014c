using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Texts;

namespace Heapwright.App.Tests.Contract;

/// <summary>The command <c>forecast</c> as the contract has it: names, shapes, defaults, refusals.</summary>
public class ForecastAnswersTests
{
    private const string Heap = """
        "bin":{"shape":"box","length_m":1.1,"width_m":1.1,"height_m":1},
        "ingredients":[
        {"material":"grass_clippings_fresh","amount":{"value":250,"unit":"l"}},
        {"material":"leaves_mixed_dry","amount":{"value":600,"unit":"l"}},
        {"material":"horse_manure_straw","amount":{"value":250,"unit":"l"}}],"water_l":60
        """;

    private const string Readings = """
        "readings":[{"day":1,"temperature_c":34,"depth_cm":45,"spot":"core"},{"day":2,"temperature_c":55},
        {"day":3,"temperature_c":62},{"day":3,"temperature_c":41,"spot":"side","depth_cm":15},{"day":4,"temperature_c":61},
        {"day":5,"temperature_c":58}]
        """;

    private static readonly string[] Deeds =
    [
        "wait",
        "turn",
        "water",
        "add_browns",
        "add_greens",
        "cover",
        "stop_adding",
        "close",
    ];

    private static readonly Lazy<JsonObject> Usual = new(() =>
        Ask($$"""{{{Heap}},{{Readings}},"from_day":5,"ahead_days":3}""")
    );

    [Fact]
    public void Milestones_TellWhatIsLeftThatRotsFast()
    {
        // Five days in a hot heap use a good part of it, and never make more.
        var left = Usual.Value["milestones"]!["fast_matter_left_pct"]!;

        Assert.InRange(left["low"]!.GetValue<double>(), 0, left["typical"]!.GetValue<double>());
        Assert.InRange(left["high"]!.GetValue<double>(), left["typical"]!.GetValue<double>(), 99.9);
    }

    [Fact]
    public void Answer_HasTheFieldsOfTheContract()
    {
        var json = Usual.Value;

        Assert.Equal(1, json["schema"]!.GetValue<int>());
        Assert.False(json["stale"]!.GetValue<bool>());
        var days = json["forecast"]!.AsArray();
        // Every 3 hours from the present on, both ends included.
        Assert.Equal(25, days.Count);
        Assert.Equal(5, days[0]!["day"]!.GetValue<double>());
        Assert.Equal(8, days[^1]!["day"]!.GetValue<double>());
        Assert.All(
            days,
            d =>
            {
                double[] core =
                [
                    .. new[] { "p05", "p25", "p50", "p75", "p95" }.Select(p =>
                        d!["core_c"]![p]!.GetValue<double>()
                    ),
                ];
                Assert.Equal(core.Order(), core);
                Assert.InRange(core[0], 0, 90);
            }
        );
        Assert.All(
            json["fitted"]!.AsArray(),
            f =>
            {
                Assert.NotEmpty(f!["parameter"]!.GetValue<string>());
                Assert.NotNull(f["before"]!["typical"]);
                Assert.NotNull(f["after"]!["typical"]);
            }
        );
        Assert.NotNull(json["normal_for_this_heap"]);
        Assert.NotEmpty(json["assumptions"]!.AsArray());
        Assert.Contains(
            json["cautions"]!.AsArray(),
            c => c!["id"]!.GetValue<string>() == "before_turning"
        );
    }

    [Fact]
    public void Actions_AreRankedAndComplete()
    {
        var actions = Usual.Value["actions"]!.AsArray();

        Assert.Contains(actions, a => a!["do"]!.GetValue<string>() == "wait");
        Assert.Contains(actions, a => a!["do"]!.GetValue<string>() == "turn");
        Assert.All(
            actions,
            a =>
            {
                Assert.Contains(a!["do"]!.GetValue<string>(), Deeds);
                Assert.InRange(a["on_day"]!.GetValue<double>(), 5, 9);
                Assert.InRange(a["chance_better_than_waiting"]!.GetValue<double>(), 0, 1);
                Assert.NotEmpty(a["why"]!.GetValue<string>());
                var effects = a["effects"]!.AsObject();
                Assert.Equal(
                    [
                        "share_held_72h_at_55_pct",
                        "first_done_day",
                        "dry_matter_loss_pct",
                        "nitrogen_loss_pct",
                        "labour_minutes",
                    ],
                    effects.Select(e => e.Key)
                );
                Assert.InRange(
                    effects["share_held_72h_at_55_pct"]!["typical"]!.GetValue<double>(),
                    0,
                    100
                );
            }
        );
        var wait = actions.Single(a => a!["do"]!.GetValue<string>() == "wait")!;
        Assert.Equal(0, wait["chance_better_than_waiting"]!.GetValue<double>());
        Assert.Equal(0, wait["effects"]!["labour_minutes"]!.GetValue<double>());
    }

    // What comes after the present must not be known: with it and without it the answer is the same.
    [Fact]
    public void Answer_ReadingsAfterThePresent_ChangeNothing()
    {
        var late = Readings.Replace(
            "[{\"day\":1,",
            "[{\"day\":6,\"temperature_c\":20},{\"day\":1,",
            StringComparison.Ordinal
        );

        var json = Ask($$"""{{{Heap}},{{late}},"from_day":5,"ahead_days":3}""");

        Assert.True(JsonNode.DeepEquals(Usual.Value["forecast"], json["forecast"]));
        Assert.True(JsonNode.DeepEquals(Usual.Value["actions"], json["actions"]));
        Assert.Equal(6, json["readings_used"]!.GetValue<int>());
        Assert.Contains(
            json["assumptions"]!.AsArray(),
            a => a!.GetValue<string>().Contains("not looked at", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Answer_WithoutReadings_SaysThatItOnlyKnowsWhatIsUsual()
    {
        var json = Ask($$"""{{{Heap}},"ahead_days":2}""");

        Assert.True(json["stale"]!.GetValue<bool>());
        Assert.Null(json["normal_for_this_heap"]);
        Assert.Equal(0, json["from_day"]!.GetValue<double>());
    }

    // A heap that is read as stone cold for days is not forecast to be at its height. One draw of members differs from
    // another by a degree or two, so the middle one of five is held against the limit.
    [Fact]
    public void Answer_ColdReadings_PullTheForecastDown()
    {
        double[] typical =
        [
            .. Enumerable
                .Range(1, 5)
                .Select(seed =>
                    Typical(
                        Ask(
                            $$"""
                            {{{Heap}},"readings":[{"day":2,"temperature_c":17},{"day":3,"temperature_c":16},{"day":4,"temperature_c":17},{"day":5,"temperature_c":16}],"from_day":5,"ahead_days":1,"seed":{{seed}}}
                            """
                        ),
                        0
                    )
                )
                .Order(),
        ];

        Assert.InRange(typical[2], 10, 25);
        Assert.True(Typical(Usual.Value, 0) > 50);
    }

    // A squeeze that streams is learned as a wetter heap.
    [Fact]
    public void Answer_WetSqueeze_IsLearned()
    {
        var dry = Ask($$"""{{{Heap}},{{Readings}},"signs":[{"day":4,"squeeze":"dry"}]}""");
        var wet = Ask(
            $$"""{{{Heap}},{{Readings}},"signs":[{"day":4,"squeeze":{"core":"streams"} }]}"""
        );

        Assert.True(
            wet["moisture_now_pct_wb"]!["typical"]!.GetValue<double>()
                > dry["moisture_now_pct_wb"]!["typical"]!.GetValue<double>() + 4
        );
    }

    // What one heap taught narrows the next one's forecast before it has any reading.
    [Fact]
    public void Answer_WithAnEarlierHeap_StartsFromWhatItTaught()
    {
        var learned = Usual.Value["learned_parameters"]!.ToJsonString();
        var plain = Ask($$"""{{{Heap}},"ahead_days":2}""");
        var taught = Ask($$"""{{{Heap}},"ahead_days":2,"earlier":[{{learned}},{{learned}}]}""");

        Assert.False(JsonNode.DeepEquals(plain["forecast"], taught["forecast"]));
    }

    [Theory]
    [InlineData("\"readings\":[{\"day\":1}]", "temperature_c")]
    [InlineData("\"readings\":[{\"day\":1,\"temperature_c\":140}]", "100")]
    [InlineData("\"readings\":[{\"day\":-1,\"temperature_c\":40}]", "-1")]
    [InlineData("\"readings\":[{\"day\":1,\"temperature_c\":40,\"spot\":\"middle\"}]", "core")]
    [InlineData("\"readings\":[{\"day\":1,\"temperature_c\":40,\"deepth_cm\":3}]", "depth_cm")]
    [InlineData("\"signs\":[{\"day\":1,\"squeeze\":\"soggy\"}]", "sponge")]
    [InlineData("\"decide_by\":\"money\"", "safe_heat")]
    [InlineData("\"ahead_days\":0", "0.25")]
    [InlineData("\"earlier\":[{\"fast_rat\":{\"mean\":0,\"deviation\":1}}]", "fast_rate")]
    public void Answer_WrongQuestion_NamesWhatIsWrong(string field, string says) =>
        Assert.Contains(
            says,
            Assert.Throws<InputProblem>(() => Ask($$"""{{{Heap}},{{field}}}""")).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Text_SaysFirstWhatToDo()
    {
        var text = ForecastAnswers
            .Answer(
                Read($$"""{{{Heap}},{{Readings}} }"""),
                SimulateLimits.CommandLine(null),
                measures: Measures.UsCustomary,
                cancellation: TestContext.Current.CancellationToken
            )
            .Text;

        Assert.Matches("^(Leave it shut|Turn it|Pour|Cover|Turn in)", text);
        Assert.Contains("°F", text, StringComparison.Ordinal);
        Assert.DoesNotContain("°C", text, StringComparison.Ordinal);
    }

    private static double Typical(JsonObject json, int at) =>
        json["forecast"]![at]!["core_c"]!["p50"]!.GetValue<double>();

    private static JsonObject Ask(string question) =>
        ForecastAnswers
            .Answer(
                Read(question),
                SimulateLimits.CommandLine(null),
                cancellation: TestContext.Current.CancellationToken
            )
            .Json;

    private static Input Read(string question) =>
        Input.Read(Encoding.UTF8.GetBytes(question), "question");
}
