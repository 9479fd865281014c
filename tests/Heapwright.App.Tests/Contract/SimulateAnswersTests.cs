using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.App.Tests.Contract;

/// <summary>The command <c>simulate</c> as the contract has it: names, shapes, defaults, refusals.</summary>
public class SimulateAnswersTests
{
    private const string Bin = """
        "bin":{"shape":"box","length_m":1.2,"width_m":1.2,"height_m":1.1}
        """;

    private const string Stuff = """
        {"material":"grass_clippings_fresh","amount":{"value":3,"unit":"wheelbarrow"}},
        {"material":"leaves_mixed_dry","amount":{"value":5,"unit":"wheelbarrow"}},
        {"material":"horse_manure_straw","amount":{"value":3,"unit":"wheelbarrow"}}
        """;

    private const string Heap = Bin + ",\"ingredients\":[" + Stuff + "],\"water_l\":40";

    private static readonly string[] Percentiles = ["p05", "p25", "p50", "p75", "p95"];

    private static readonly string[] Series =
    [
        "core_c",
        "mean_c",
        "outer_c",
        "moisture_pct_wb",
        "oxygen_pct",
        "height_cm",
    ];

    [Fact]
    public void Answer_OneMember_IsPlainNumbers()
    {
        var json = Ask($$"""{ {{Heap}},"days":4,"members":1}""");

        Assert.Equal(1, json["schema"]!.GetValue<int>());
        Assert.Equal(1UL, json["seed"]!.GetValue<ulong>());
        // Every 3 hours: 8 looks a day, and the first.
        Assert.Equal(33, json["day"]!.AsArray().Count);
        foreach (var name in Series)
        {
            Assert.Equal(33, json[name]!.AsArray().Count);
            Assert.All(json[name]!.AsArray(), v => Assert.IsAssignableFrom<JsonValue>(v));
        }

        Assert.All(
            json["milestones"]!.AsObject(),
            m => Assert.True(m.Value is null or JsonValue, m.Key)
        );
        Assert.Equal(
            [
                "first_49_c_day",
                "first_55_c_day",
                "first_60_c_day",
                "peak_c",
                "peak_day",
                "days_at_or_above_55_c",
                "share_held_72h_at_55_pct",
                "share_dose_met_pct",
                "dry_matter_loss_pct",
                "nitrogen_loss_pct",
                "final_volume_pct",
            ],
            json["milestones"]!.AsObject().Select(m => m.Key)
        );
        Assert.Equal(
            ["latent_pct", "surface_pct", "air_pct"],
            json["heat"]!.AsObject().Select(m => m.Key)
        );
        Assert.All(json["heat"]!.AsObject(), m => Assert.IsAssignableFrom<JsonValue>(m.Value));
        Assert.Equal(
            ["water_kg", "carbon_kg", "nitrogen_kg", "energy_pct"],
            json["balance_error"]!.AsObject().Select(m => m.Key)
        );
        var peak = json["milestones"]!["peak_c"]!.GetValue<double>();
        Assert.Equal(json["core_c"]!.AsArray().Max(v => v!.GetValue<double>()), peak);
    }

    [Fact]
    public void Answer_SeveralMembers_IsPercentilesInOrder()
    {
        var json = Ask($$"""{ {{Heap}},"days":3,"members":16}""");

        foreach (var name in Series)
        {
            Assert.All(
                json[name]!.AsArray(),
                v =>
                {
                    Assert.Equal(Percentiles, v!.AsObject().Select(p => p.Key));
                    var values = Percentiles.Select(p => v[p]!.GetValue<double>()).ToArray();
                    Assert.Equal(values.Order(), values);
                }
            );
        }

        foreach (var (name, value) in json["milestones"]!.AsObject())
        {
            var mayFail = name.StartsWith("first_", StringComparison.Ordinal);
            Assert.Equal(
                mayFail
                    ? ["low", "typical", "high", "share_reaching"]
                    : (IEnumerable<string>)["low", "typical", "high"],
                value!.AsObject().Select(p => p.Key)
            );
        }
    }

    // Typical is the day by which half of all members are there, so it is there exactly if half of them are.
    [Theory]
    [InlineData(15, 40, 8)]
    [InlineData(-5, 40, 8)]
    [InlineData(10, 200, 12)]
    public void Milestone_ReachedByLessThanHalf_HasNoTypicalDay(int air, int water, int days)
    {
        var json = Ask(
            $$"""{ {{Bin}},"ingredients":[{{Stuff}}],"water_l":{{water}},"weather":{"air_c":{{air}} },"days":{{days}},"members":24}"""
        );

        foreach (var celsius in new[] { 49, 55, 60 })
        {
            var mark = json["milestones"]![$"first_{celsius}_c_day"]!;
            var share = mark["share_reaching"]!.GetValue<double>();
            Assert.InRange(share, 0, 1);
            if (share < 0.5)
            {
                Assert.Null(mark["typical"]);
            }
            else if (share > 0.55)
            {
                Assert.NotNull(mark["typical"]);
            }

            Assert.Equal(share < 0.95, mark["high"] is null);
        }
    }

    [Fact]
    public void Milestone_OutOfReach_IsNull()
    {
        var json = Ask($$"""{ {{Heap}},"days":1,"members":1,"start_c":5,"weather":{"air_c":5} }""");

        Assert.True(json["milestones"]!.AsObject().ContainsKey("first_60_c_day"));
        Assert.Null(json["milestones"]!["first_60_c_day"]);
    }

    [Fact]
    public void Zones_OfABox_AreItsPartsAndTheirTemperatures()
    {
        var json = Ask($$"""{ {{Heap}},"days":2.5,"members":8}""");

        var zones = json["zones"]!;
        var count = zones["rings"]!.GetValue<int>() * zones["layers"]!.GetValue<int>();
        Assert.Equal([0.0, 1, 2, 2.5], zones["day"]!.AsArray().Select(d => d!.GetValue<double>()));
        Assert.Equal(count, zones["zone"]!.AsArray().Count);
        Assert.Equal(count, zones["temperature_c"]!.AsArray().Count);
        Assert.All(zones["temperature_c"]!.AsArray(), z => Assert.Equal(4, z!.AsArray().Count));
        Assert.Equal(
            json["built_volume_m3"]!.GetValue<double>(),
            zones["zone"]!.AsArray().Sum(z => z!["volume_m3"]!.GetValue<double>()),
            1e-9
        );
        Assert.Equal(0.6, zones["zone"]![count - 1]!["outer_m"]!.GetValue<double>(), 1e-12);
    }

    [Fact]
    public void Event_InTheMiddle_StandsOnBothSides()
    {
        var json = Ask(
            $$"""{ {{Heap}},"days":4,"members":1,"events":[{"day":2.3,"do":"turn","part":"outside_in","thoroughness":"good"}]}"""
        );

        var days = json["day"]!.AsArray().Select(d => d!.GetValue<double>()).ToArray();
        Assert.Equal(2, days.Count(d => d == 2.3));
        var at = Array.IndexOf(days, 2.3);
        var core = json["core_c"]!.AsArray();
        // Turning brings cool matter to the core.
        Assert.True(core[at + 1]!.GetValue<double>() < core[at]!.GetValue<double>() - 1);
    }

    [Fact]
    public void Events_OfEveryKind_AreDone()
    {
        var json = Ask(
            $$"""
            {{{Heap}},"days":5,"members":1,"cover":"none","walls":"straw_bale","events":[
              {"day":4,"do":"cover","kind":"straw"},{"day":3,"do":"add","ingredients":[{{Stuff}}]},
              {"day":1,"do":"water","l":60},{"day":2,"do":"turn","part":"top_half"},{"day":9,"do":"turn"}]}
            """
        );

        var days = json["day"]!.AsArray().Select(d => d!.GetValue<double>()).ToList();
        double Jump(string name, double day)
        {
            var at = days.IndexOf(day);
            return json[name]![at + 1]!.GetValue<double>() - json[name]![at]!.GetValue<double>();
        }

        Assert.True(Jump("moisture_pct_wb", 1) > 1);
        Assert.True(Jump("height_cm", 3) > 10);
        Assert.Contains(
            Assumptions(json),
            a => a.StartsWith("\"turn\" on day 9 is after the 5 days", StringComparison.Ordinal)
        );
        Assert.Contains(
            Assumptions(json),
            a => a.StartsWith("A turn of which nothing", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Defaults_AreSaid()
    {
        var said = Assumptions(Ask($$"""{ {{Bin}},"ingredients":[{{Stuff}}],"members":1}"""));

        Assert.Contains("Air of 15 °C on average is assumed.", said);
        Assert.Contains("Wind of 1 m/s is assumed.", said);
        Assert.Contains("No rain is assumed.", said);
        Assert.Contains("Walls of slatted timber are assumed.", said);
        Assert.Contains("A cover that breathes is assumed.", said);
        Assert.Contains("It is followed for 60 days.", said);
        Assert.Contains("The stuff goes in as warm as the air is on average, 15 °C.", said);
    }

    [Fact]
    public void Defaults_Given_AreTheSameHeap()
    {
        var short_ = Ask($$"""{ {{Heap}},"days":2,"members":1}""");
        var full = Ask(
            $$"""
            {{{Heap}},"days":2,"members":1,"seed":1,"schema":1,"walls":"slatted","cover":"breathable","start_c":15,
             "start":"2026-05-02T12:00:00Z","weather":{"air_c":15,"swing_c":5,"wind_m_s":1,"rain_mm_day":0},"events":[]}
            """
        );

        foreach (var name in Series)
        {
            Assert.Equal(short_[name]!.ToJsonString(), full[name]!.ToJsonString());
        }
    }

    [Fact]
    public void Heap_TooLargeForItsBin_IsTroddenInAndSaid()
    {
        var json = Ask(
            $$"""{"bin":{"length_m":0.7,"width_m":0.7,"height_m":0.9},"ingredients":[{{Stuff}}],"water_l":40,"days":1,"members":1}"""
        );

        Assert.Contains(Assumptions(json), a => a.Contains("trodden in", StringComparison.Ordinal));
    }

    [Fact]
    public void Plan_OfARecipe_IsTheSameHeapAsItsIngredients()
    {
        var plain = Ask($$"""{ {{Heap}},"days":1,"members":8}""");
        var plan = Ask(
            $$"""{ {{Bin}},"plan":{"use":[{{Stuff}}],"buy":[],"water_l":40,"cost":0,"notes":["n"]},"days":1,"members":8}"""
        );
        var whole = Ask(
            $$"""
            {"status":"ok","plans":[{"use":[],"water_l":1},{"use":[{{Stuff}}],"water_l":40}],"number":2,
             "volume_m3":{"low":null,"high":1.5},{{Bin}},"shortfalls":[],"assumptions":[],"cautions":[],"days":1,"members":8}
            """
        );

        Assert.Equal(plain.ToJsonString(), plan.ToJsonString());
        Assert.Equal(plain.ToJsonString(), whole.ToJsonString());
    }

    [Fact]
    public void Hourly_ListAndTable_AreTheSameWeather()
    {
        var rows = new StringBuilder();
        var table = new StringBuilder("time,air_c,wind_m_s\r\n");
        for (var hour = 0; hour <= 48; hour++)
        {
            var time = new DateTimeOffset(2026, 5, 2, 6, 0, 0, TimeSpan.FromHours(1)).AddHours(
                hour
            );
            var stamp = time.ToString(
                "yyyy-MM-ddTHH:mm:sszzz",
                System.Globalization.CultureInfo.InvariantCulture
            );
            rows.Append(hour == 0 ? "" : ",")
                .Append(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"[\"{stamp}\",{10 + (hour % 7)},2]"
                );
            table.Append(
                System.Globalization.CultureInfo.InvariantCulture,
                $"{stamp},{10 + (hour % 7)},2\r\n"
            );
        }

        var start = "\"start\":\"2026-05-02T08:00:00+01:00\"";
        var list = Ask(
            $$"""{ {{Heap}},"days":1,"members":1,{{start}},"weather":{"hourly":[{{rows}}]} }"""
        );
        var read = Ask(
            $$"""{ {{Heap}},"days":1,"members":1,{{start}},"weather":{"hourly_csv":"weather.csv"} }""",
            table.ToString()
        );

        Assert.Equal(list.ToJsonString(), read.ToJsonString());
        Assert.Contains("No rain is assumed.", Assumptions(list));
        Assert.DoesNotContain("Wind of 1 m/s is assumed.", Assumptions(list));
    }

    [Theory]
    [InlineData("", "weather.csv: line 1: the column \"\" is not known")]
    [InlineData("time,air_c\n", "weather.csv: has 0 rows of weather; at least 2 are needed")]
    [InlineData("time;air_c\n0;4\n", "line 1: separates its cells by semicolons")]
    [InlineData("time,air\n0,4\n", "the column \"air\" is not known; the nearest is \"air_c\"")]
    [InlineData("time,wind_m_s\n0,4\n", "the column \"air_c\" is missing")]
    [InlineData("time,air_c,air_c\n0,4,4\n", "the column \"air_c\" stands twice")]
    [InlineData(
        "time,air_c\n0,4\n1,warm\n",
        "line 3, column air_c: \"warm\" is not a number; -40 to 50"
    )]
    [InlineData("time,air_c\n0,4\n1,99\n", "line 3, column air_c: 99 is out of range; -40 to 50")]
    [InlineData("time,air_c\n0,4\n\n1,5,6\n", "line 4: has 3 cells; the header has 2")]
    [InlineData("time,air_c\n1,4\n1,5\n", "line 3, column time: is not after the row before it")]
    [InlineData(
        "time,air_c\n2026-05-02,4\n",
        "line 2, column time: \"2026-05-02\" is neither a time with an offset"
    )]
    [InlineData("time,air_c\n0,4\n2026-05-02T00:00Z,4\n", "times and days are mixed")]
    public void Table_Wrong_IsNamedByLineAndColumn(string table, string part)
    {
        var problem = Assert.Throws<InputProblem>(() =>
            Ask(
                $$"""{ {{Heap}},"days":1,"members":1,"weather":{"hourly_csv":"weather.csv"} }""",
                table
            )
        );

        Assert.Contains(part, problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{}", "the field \"bin\" is missing")]
    [InlineData("{BIN}", "the field \"ingredients\" is missing")]
    [InlineData("{BIN,\"ingredients\":[]}", "ingredients: has 0 entries; 1 to 60")]
    [InlineData(
        "{BIN,\"ingredients\":[{\"material\":\"wheat_straw\",\"amount\":{\"value\":0,\"unit\":\"bale\"}}]}",
        "every amount is 0"
    )]
    [InlineData(
        "{BIN,\"ingredients\":[{\"name\":\"x q z\",\"carbon_pct_db\":40,\"nitrogen_pct_db\":1,\"moisture_pct_wb\":50,\"amount\":{\"value\":5,\"unit\":\"kg\"}}]}",
        "bulk_density_kg_m3 is missing"
    )]
    [InlineData("{HEAP,\"dayz\":3}", "\"dayz\" is not known; the nearest is \"days\"")]
    [InlineData("{HEAP,\"days\":366}", "days: 366 is out of range; 0.25 to 365")]
    [InlineData("{HEAP,\"members\":2001}", "members: 2001 is out of range; 1 to 2000")]
    [InlineData(
        "{HEAP,\"members\":2000,\"days\":365}",
        "2000 members times 365 days is 730000; at most 120000"
    )]
    [InlineData("{HEAP,\"members\":0}", "members: 0 is out of range")]
    [InlineData("{HEAP,\"members\":2.5}", "members: 2.5 is not a whole number")]
    [InlineData(
        "{HEAP,\"start\":\"2026-05-02T09:00:00\"}",
        "start: \"2026-05-02T09:00:00\" is no time with an offset"
    )]
    [InlineData("{HEAP,\"start_c\":90}", "start_c: 90 is out of range")]
    [InlineData("{HEAP,\"walls\":\"slated\"}", "walls: \"slated\" is not allowed")]
    [InlineData("{HEAP,\"cover\":\"tarp\"}", "cover: \"tarp\" is not allowed")]
    [InlineData(
        "{HEAP,\"weather\":{\"air\":3}}",
        "weather: the field \"air\" is not known; the nearest is \"air_c\""
    )]
    [InlineData(
        "{HEAP,\"weather\":{\"air_c\":60}}",
        "weather.air_c: 60 is out of range; -40 to 50"
    )]
    [InlineData(
        "{HEAP,\"weather\":{\"air_c\":6,\"hourly\":[[0,1],[1,2]]}}",
        "weather.air_c: stands beside \"hourly\""
    )]
    [InlineData(
        "{HEAP,\"weather\":{\"hourly\":[[0,1]]}}",
        "weather.hourly: has 1 entry; 2 to 10000"
    )]
    [InlineData(
        "{HEAP,\"weather\":{\"hourly\":[[0,1],[0,2]]}}",
        "weather.hourly[1][0]: is not after the row before it"
    )]
    [InlineData(
        "{HEAP,\"weather\":{\"hourly\":[[0,null],[1,2]]}}",
        "weather.hourly[0][1]: null was found"
    )]
    [InlineData("{HEAP,\"events\":[{\"do\":\"turn\"}]}", "events[0]: the field \"day\" is missing")]
    [InlineData(
        "{HEAP,\"events\":[{\"day\":1,\"do\":\"stir\"}]}",
        "events[0].do: \"stir\" is not allowed"
    )]
    [InlineData(
        "{HEAP,\"events\":[{\"day\":1,\"do\":\"turn\",\"l\":4}]}",
        "events[0].l: \"turn\" has no l; it has thoroughness, part"
    )]
    [InlineData(
        "{HEAP,\"events\":[{\"day\":1,\"do\":\"water\"}]}",
        "events[0]: the field \"l\" is missing"
    )]
    [InlineData(
        "{HEAP,\"events\":[{\"day\":-1,\"do\":\"turn\"}]}",
        "events[0].day: -1 is out of range"
    )]
    [InlineData("{HEAP,\"plan\":{\"use\":[]}}", "\"plan\" and \"ingredients\" were both given")]
    public void Question_Wrong_IsRefusedInOneSentence(string question, string part)
    {
        var json = question
            .Replace("HEAP", Heap, StringComparison.Ordinal)
            .Replace("BIN", Bin, StringComparison.Ordinal);

        var problem = Assert.Throws<InputProblem>(() => Ask(json));

        Assert.Contains(part, problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem.Message);
    }

    [Fact]
    public void File_OverTheWeb_IsRefused()
    {
        var problem = Assert.Throws<InputProblem>(() =>
            SimulateAnswers.Answer(
                Read($$"""{ {{Heap}},"weather":{"hourly_csv":"/etc/passwd"} }"""),
                SimulateLimits.Web,
                cancellation: TestContext.Current.CancellationToken
            )
        );

        Assert.Contains(
            "only the command line reads files",
            problem.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Cautions_OfAHotHeap_SayWhatAComputationIsNot()
    {
        var ids = Ask($$"""{ {{Heap}},"days":8,"members":16}""")["cautions"]!
            .AsArray()
            .Select(c => c!["id"]!.GetValue<string>())
            .ToList();

        Assert.Contains("computed_heat", ids);
        Assert.Contains("hot_heap", ids);
        Assert.Contains("raw_manure", ids);
        Assert.Contains("legionella_dust", ids);
    }

    [Fact]
    public void Work_GivenUp_Stops()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();

        Assert.ThrowsAny<OperationCanceledException>(() =>
            SimulateAnswers.Answer(
                Read($$"""{ {{Heap}},"days":300,"members":100}"""),
                SimulateLimits.Web,
                cancellation: stop.Token
            )
        );
    }

    // Thin layers take hours to follow, and next to nothing has no equations; both once came through.
    [Theory]
    [InlineData("""{"shape":"box","length_m":100,"width_m":100,"height_m":1}""", "5")]
    [InlineData("""{"shape":"box","length_m":1,"width_m":1,"height_m":1}""", "0.000001")]
    public void Question_OfStuffSpreadThin_IsRefused(string bin, string kilograms)
    {
        var problem = Assert.Throws<InputProblem>(() =>
            Ask(
                $$"""{"bin":{{bin}},"ingredients":[{"material":"wheat_straw","amount":{"value":{{kilograms}},"unit":"kg"} }]}"""
            )
        );

        Assert.Contains("at least 5 cm make a heap", problem.Message, StringComparison.Ordinal);
        Assert.Contains("bin: ", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Question_MovedToAWideFloor_IsRefused()
    {
        var problem = Assert.Throws<InputProblem>(() =>
            Ask(
                $$"""{ {{Heap}},"events":[{"day":3,"do":"move","bin":{"shape":"box","length_m":90,"width_m":90,"height_m":1} }]}"""
            )
        );

        Assert.Contains("events: ", problem.Message, StringComparison.Ordinal);
        Assert.Contains("at least 5 cm make a heap", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_ForAPerson_HasMilestonesAndAChart()
    {
        var text = SimulateAnswers
            .Answer(
                Read($$"""{ {{Heap}},"days":6,"members":16}"""),
                SimulateLimits.CommandLine(null),
                cancellation: TestContext.Current.CancellationToken
            )
            .Text;

        Assert.Contains("The core", text, StringComparison.Ordinal);
        Assert.Contains("Hottest in the core:", text, StringComparison.Ordinal);
        Assert.Contains("a computation, not a measurement", text, StringComparison.Ordinal);
        Assert.Contains("  60 |", text, StringComparison.Ordinal);
    }

    private static IReadOnlyList<string> Assumptions(JsonObject json) =>
        [.. json["assumptions"]!.AsArray().Select(a => a!.GetValue<string>())];

    private static Input Read(string json) => Input.Read(Encoding.UTF8.GetBytes(json), "test");

    private static JsonObject Ask(string json, string? table = null) =>
        SimulateAnswers
            .Answer(Read(json), SimulateLimits.CommandLine(table is null ? null : (_, _) => table))
            .Json;
}
