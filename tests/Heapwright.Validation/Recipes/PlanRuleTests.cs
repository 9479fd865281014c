using System.Globalization;
using System.Text.Json.Nodes;

namespace Heapwright.Validation.Recipes;

/// <summary>
/// What holds of every plan from the library, whatever was asked: no more than there is, all of what must go in, whole
/// containers, and a build sheet that accounts for every litre.
/// </summary>
public class PlanRuleTests(ITestOutputHelper output)
{
    private const int Questions = 40;

    private static readonly string[] Greens =
    [
        "grass_clippings_fresh",
        "kitchen_scraps",
        "coffee_grounds",
        "horse_manure_straw",
        "nettles_fresh",
        "weeds_annual_fresh",
    ];

    private static readonly string[] Browns =
    [
        "leaves_mixed_dry",
        "wheat_straw",
        "wood_chips_coarse",
        "cardboard_corrugated",
        "sweetcorn_stalks_dry",
        "hedge_clippings_green",
    ];

    private static readonly (string Unit, double Litres)[] Units =
    [
        ("bucket", 14),
        ("wheelbarrow", 90),
        ("bag", 70),
        ("l", 1),
    ];

    [Fact]
    public void Plans_OfManyQuestions_KeepWhatWasAsked()
    {
        var statuses = new Dictionary<string, int>(StringComparer.Ordinal);
        var plans = 0;
        for (var seed = 1; seed <= Questions; seed++)
        {
            var question = JsonNode.Parse(Question(new Random(seed)).ToJsonString())!.AsObject();
            var answer = Ask.Recipe(question.ToJsonString());
            var status = answer.Json["status"].Word();
            statuses[status] = statuses.GetValueOrDefault(status) + 1;
            Assert.Equal(status == "ok", answer.Yes);
            foreach (var plan in answer.Json["plans"]!.AsArray())
            {
                plans++;
                CheckAmounts(question, answer.Json, plan!, seed);
                CheckSheet(answer.Json, plan!, seed);
            }
        }

        output.WriteLine(
            $"{Questions} questions from seed 1, {plans} plans: {string.Join(", ", statuses.Select(s => $"{s.Value} {s.Key}"))}"
        );
        Assert.True(plans >= Questions / 2);
    }

    private static JsonObject Question(Random random)
    {
        JsonObject Entry(string material, bool buy)
        {
            var (unit, litres) = Units[random.Next(Units.Length)];
            var most = Math.Max(1, Math.Round(random.Next(30, 500) / litres));
            return buy
                ? new JsonObject
                {
                    ["material"] = material,
                    ["unit"] = unit,
                    ["price"] = random.Next(0, 9),
                    ["limit"] = most,
                }
                : new JsonObject
                {
                    ["material"] = material,
                    ["amount"] = new JsonObject
                    {
                        ["value"] = most + (random.Next(4) == 0 ? 0.5 : 0),
                        ["unit"] = unit,
                    },
                    ["must_use"] = random.Next(4) == 0,
                };
        }

        var greens = Greens.OrderBy(_ => random.Next()).Take(random.Next(1, 3));
        var browns = Browns.OrderBy(_ => random.Next()).Take(random.Next(1, 4)).ToList();
        var question = new JsonObject
        {
            ["have"] = new JsonArray([
                .. greens.Concat(browns.Skip(1)).Select(m => Entry(m, buy: false)),
            ]),
            ["can_buy"] = new JsonArray([Entry(browns[0], buy: true)]),
            ["containers"] = new JsonObject
            {
                ["bucket"] = 14,
                ["wheelbarrow"] = 90,
                ["bag"] = 70,
            },
            ["seed"] = random.Next(100),
        };
        if (random.Next(2) == 0)
        {
            question["bin"] = new JsonObject
            {
                ["length_m"] = 1,
                ["width_m"] = 1,
                ["height_m"] = random.Next(2) == 0 ? 1 : 0.5,
            };
        }

        if (random.Next(3) == 0)
        {
            question["bands"] = new JsonObject
            {
                ["carbon_nitrogen_ratio"] = new JsonObject { ["low"] = 20, ["high"] = 40 },
                ["free_air_space_pct"] = null,
            };
        }

        return question;
    }

    private static void CheckAmounts(
        JsonObject question,
        JsonObject answer,
        JsonNode plan,
        int seed
    )
    {
        var used = Sums(plan["use"]!.AsArray());
        var bought = Sums(plan["buy"]!.AsArray());
        var left = Sums(answer["left_over"]!.AsArray());
        var first = ReferenceEquals(plan, answer["plans"]![0]);
        foreach (var entry in question["have"]!.AsArray())
        {
            var material = entry!["material"].Word();
            var there = entry["amount"]!["value"].Number();
            var amount = used.GetValueOrDefault(material);
            Assert.True(
                amount <= there * (1 + 1e-9),
                $"seed {seed}: {amount} of {there} {material}"
            );
            if (entry["must_use"]!.GetValue<bool>())
            {
                Assert.True(
                    Math.Abs(amount - there) <= 1e-9 * there,
                    $"seed {seed}: only {amount} of {there} {material}, which must all go in"
                );
            }
            else if (entry["amount"]!["unit"].Word() != "l")
            {
                Assert.True(
                    Math.Abs(amount - Math.Round(amount)) < 1e-9,
                    $"seed {seed}: {amount} {material}"
                );
            }

            if (first)
            {
                Assert.Equal(there, amount + left.GetValueOrDefault(material), 1e-6 * there);
            }
        }

        double cost = 0;
        foreach (var entry in question["can_buy"]!.AsArray())
        {
            var amount = bought.GetValueOrDefault(entry!["material"].Word());
            Assert.True(amount <= entry["limit"].Number() * (1 + 1e-9), $"seed {seed}");
            cost += amount * entry["price"].Number();
        }

        Assert.Equal(cost, plan["cost"].Number(), 1e-6);
        // A band that was switched off has no chance; the others have one.
        var off = question["bands"] is JsonObject bands && bands.ContainsKey("free_air_space_pct");
        Assert.Equal(off, plan["chance_in_band"]!["free_air_space_pct"] is null);
        Assert.NotNull(plan["chance_in_band"]!["moisture_pct_wb"]);
    }

    // The whole answer is handed on to build, as a person would; every amount and every litre must come back.
    private static void CheckSheet(JsonObject answer, JsonNode plan, int seed)
    {
        var question = answer.DeepClone().AsObject();
        question["number"] = plan["number"]!.GetValue<int>();
        var sheet = Ask.Build(question.ToJsonString()).Json;
        var layers = sheet["layers"]!.AsArray();
        Assert.NotEmpty(layers);
        var laid = Sums([.. layers.SelectMany(l => l!["ingredients"]!.AsArray())]);
        var left = Sums(sheet["left_over"]!.AsArray());
        var planned = Sums([.. plan["use"]!.AsArray(), .. plan["buy"]!.AsArray()]);
        Assert.Equal(
            planned.Keys.Order(StringComparer.Ordinal),
            laid.Keys.Union(left.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal)
        );
        foreach (var (material, amount) in planned)
        {
            var there = laid.GetValueOrDefault(material) + left.GetValueOrDefault(material);
            Assert.True(
                Math.Abs(there - amount) <= 1e-6 * amount,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"seed {seed}: {there} of {amount} {material} are in the sheet"
                )
            );
        }

        var water = layers.Sum(l => l!["water_l"].Number());
        Assert.Equal(sheet["total_water_l"].Number(), water, 1e-6 * Math.Max(1, water));
        if (left.Count == 0)
        {
            Assert.Equal(plan["water_l"].Number(), water, 1e-6 * Math.Max(1, water));
        }

        Assert.All(layers, l => Assert.True(l!["thickness_cm"].Number() > 0));
        Assert.Equal(
            Enumerable.Range(1, layers.Count),
            layers.Select(l => l!["number"]!.GetValue<int>())
        );
        Assert.True(sheet["settled_height_cm"].Number() <= sheet["height_cm"].Number());
    }

    private static Dictionary<string, double> Sums(IEnumerable<JsonNode?> entries) =>
        entries
            .GroupBy(e => e!["material"].Word(), StringComparer.Ordinal)
            .ToDictionary(
                g => g.Key,
                g => g.Sum(e => e!["amount"]!["value"].Number()),
                StringComparer.Ordinal
            );
}
