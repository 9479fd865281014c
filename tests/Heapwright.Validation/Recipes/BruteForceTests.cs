using System.Text.Json.Nodes;

namespace Heapwright.Validation.Recipes;

/// <summary>
/// The recipe of small exact questions against going through every choice: whether there is one, the best, and what the
/// plan says of itself.
/// </summary>
public class BruteForceTests(ITestOutputHelper output)
{
    private const int Instances = 200;

    // A condition met or missed by less than this, relatively, may fall either way by rounding.
    private const double Edge = 1e-7;

    [Fact]
    public void Recipe_SmallExactQuestions_AreSolvedAsByHand()
    {
        var (ok, short_, bought, watered) = (0, 0, 0, 0);
        for (var seed = 1; seed <= Instances; seed++)
        {
            var instance = Instance.Of(seed);
            var answer = Ask.Recipe(instance.Json());
            var strict = ByHand.Best(instance, -Edge);
            var loose = ByHand.Best(instance, Edge);
            var status = answer.Json["status"].Word();
            if (strict is null && loose is null)
            {
                Assert.True(
                    status is "falls_short",
                    $"seed {seed}: {status}, though by hand there is none: {instance.Json()}"
                );
                CheckShort(answer.Json, answer.Yes, seed);
                short_++;
                continue;
            }

            if (strict is null)
            {
                continue;
            }

            Assert.True(
                status is "ok",
                $"seed {seed}: {status}, though by hand there is one worth {strict}: {instance.Json()}"
            );
            Assert.True(answer.Yes);
            var plans = answer.Json["plans"]!.AsArray();
            Assert.InRange(plans.Count, 1, 3);
            foreach (var plan in plans)
            {
                CheckPlan(instance, plan!, seed);
            }

            var value = ByHand.Value(instance, Amounts(instance, plans[0]!));
            Assert.True(
                value.CompareTo(strict.Value) <= 0 && value.CompareTo(loose!.Value) >= 0,
                $"seed {seed}, {instance.Aim}: {value} instead of {strict}: {instance.Json()}"
            );
            Assert.True(plans[0]!["proven_best"]!.GetValue<bool>(), $"seed {seed}: not proven");
            ok++;
            bought += plans[0]!["cost"].Number() > 0 ? 1 : 0;
            watered += plans[0]!["water_l"].Number() > 0 ? 1 : 0;
        }

        output.WriteLine(
            $"{Instances} questions from seed 1: {ok} solved ({bought} with a purchase, {watered} with water), {short_} cannot be met"
        );
        // All outcomes occur, or the comparison would be of nothing.
        Assert.True(ok > Instances / 4);
        Assert.True(short_ > Instances / 10);
        Assert.True(bought > 5);
        Assert.True(watered > 5);
    }

    private static void CheckPlan(Instance instance, JsonNode plan, int seed)
    {
        var amounts = Amounts(instance, plan);
        var water = plan["water_l"].Number();
        var room = ByHand.Water(instance, amounts, Edge);
        Assert.True(
            room is not null,
            $"seed {seed}: the plan breaks a condition: {instance.Json()}"
        );
        Assert.InRange(water, room.Value.Low - 1e-4, room.Value.High + 1e-4);
        var cost = instance.Picks.Select((p, i) => (p.Price ?? 0) * amounts[i]).Sum();
        Assert.Equal(cost, plan["cost"].Number(), 1e-9);

        // What the plan says of the mixture, counted again.
        var sums = ByHand.Sum(instance, amounts);
        sums.AddWater(water);
        var filled = sums.Litres * Instance.Factor;
        var mixture = plan["mixture"]!;
        Assert.Equal(sums.Ratio, mixture["carbon_nitrogen_ratio"].Typical(), 1e-7 * sums.Ratio);
        Assert.Equal(sums.Moisture, mixture["moisture_pct_wb"].Typical(), 1e-7 * 100);
        Assert.Equal(sums.Air(filled), mixture["free_air_space_pct"].Typical(), 1e-7 * 100);
        Assert.Equal(filled, mixture["filled_volume_l"].Typical(), 1e-7 * filled);
        Assert.Equal(1, plan["chance_in_band"]!["all"].Number());
        if (instance.LeastAir is null)
        {
            Assert.Null(plan["chance_in_band"]!["free_air_space_pct"]);
        }
    }

    private static void CheckShort(JsonObject answer, bool yes, int seed)
    {
        Assert.False(yes);
        var shortfalls = answer["shortfalls"]!.AsArray();
        Assert.True(shortfalls.Count > 0, $"seed {seed}: falls short of nothing");
        foreach (var shortfall in shortfalls)
        {
            Assert.Contains(
                shortfall!["what"].Word(),
                (string[])["volume", "nitrogen", "carbon", "water", "dryness", "air"]
            );
            Assert.True(shortfall["missing"].Number() > 0);
        }

        var nearest = Assert.Single(answer["plans"]!.AsArray())!;
        Assert.NotNull(nearest["mixture"]);
        Assert.NotNull(nearest["expect"]);
        Assert.False(nearest["proven_best"]!.GetValue<bool>());
        // Volume is no band: where nothing but volume is short, the bands hold.
        var bandsHold = shortfalls.All(s => s!["what"].Word() == "volume");
        Assert.Equal(bandsHold ? 1 : 0, nearest["chance_in_band"]!["all"].Number());
    }

    // Whole buckets, no more than there are.
    private static int[] Amounts(Instance instance, JsonNode plan)
    {
        var amounts = new int[instance.Picks.Count];
        foreach (var entry in plan["use"]!.AsArray().Concat(plan["buy"]!.AsArray()))
        {
            var i = instance.Picks.ToList().FindIndex(p => p.Name == entry!["name"].Word());
            var value = entry!["amount"]!["value"].Number();
            Assert.Equal("bucket", entry["amount"]!["unit"].Word());
            Assert.Equal(Math.Round(value), value);
            Assert.InRange(value, 1, instance.Picks[i].Most);
            amounts[i] += (int)value;
        }

        return amounts;
    }
}
