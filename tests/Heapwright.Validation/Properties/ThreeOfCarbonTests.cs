using System.Text.Json.Nodes;
using CsCheck;
using Heapwright.App.Contract;

namespace Heapwright.Validation.Properties;

/// <summary>Carbon, nitrogen and their ratio: two fix the third, and what cannot be is refused.</summary>
public class ThreeOfCarbonTests(ITestOutputHelper output)
{
    [Fact]
    public void Ingredient_AnyTwoOfTheThree_FixTheThird() =>
        Gen.Select(Gen.Double[10, 55], Gen.Double[0.2, 6])
            .Sample(
                (carbon, nitrogen) =>
                {
                    var (c, n) = (Known.Text(carbon), Known.Text(nitrogen));
                    var r = Known.Text(carbon / nitrogen);
                    foreach (
                        var two in (string[])
                            [
                                $"\"carbon_pct_db\":{c},\"nitrogen_pct_db\":{n}",
                                $"\"carbon_pct_db\":{c},\"carbon_nitrogen_ratio\":{r}",
                                $"\"nitrogen_pct_db\":{n},\"carbon_nitrogen_ratio\":{r}",
                                $"\"carbon_pct_db\":{c},\"nitrogen_pct_db\":{n},\"carbon_nitrogen_ratio\":{r}",
                            ]
                    )
                    {
                        // 10 kg at 50 % moisture are 5 kg dry.
                        var answer = Mixed(two);
                        Assert.Equal(
                            carbon / nitrogen,
                            answer["carbon_nitrogen_ratio"].Typical(),
                            1e-9 * carbon / nitrogen
                        );
                        Assert.Equal(0.05 * carbon, answer["carbon_kg"].Typical(), 1e-9);
                        Assert.Equal(0.05 * nitrogen, answer["nitrogen_kg"].Typical(), 1e-9);
                    }
                },
                writeLine: output.WriteLine,
                iter: 50
            );

    // 45/1.5 is 30: 0.99 % off on either side is taken, 1.01 % is a contradiction.
    [Theory]
    [InlineData(30.297, true)]
    [InlineData(29.706, true)]
    [InlineData(30.3061, false)]
    [InlineData(29.70, false)]
    public void Ingredient_AllThree_MayDifferByOnePercent(double ratio, bool taken)
    {
        var question =
            $"\"carbon_pct_db\":45,\"nitrogen_pct_db\":1.5,\"carbon_nitrogen_ratio\":{Known.Text(ratio)}";
        if (taken)
        {
            Assert.InRange(Mixed(question)["carbon_nitrogen_ratio"].Typical(), 29.7, 30.31);
            return;
        }

        var problem = Assert.Throws<InputProblem>(() => Mixed(question));
        Assert.Equal("ingredients[0].carbon_nitrogen_ratio", problem.Place);
        Assert.Contains(Known.Text(ratio), problem.Message, StringComparison.Ordinal);
        Assert.Contains("1 %", problem.Message, StringComparison.Ordinal);
    }

    // Dry matter cannot hold more than all of itself.
    [Theory]
    [InlineData("\"carbon_pct_db\":60,\"nitrogen_pct_db\":50")]
    [InlineData("\"carbon_pct_db\":45,\"carbon_nitrogen_ratio\":0.2")]
    [InlineData("\"nitrogen_pct_db\":8,\"carbon_nitrogen_ratio\":15")]
    [InlineData("\"carbon_pct_db\":60,\"nitrogen_pct_db\":1,\"ash_pct_db\":50")]
    public void Ingredient_MoreThanAllOfTheDryMatter_IsRefused(string properties)
    {
        var problem = Assert.Throws<InputProblem>(() => Mixed(properties));
        Assert.StartsWith("question: ingredients[0]", problem.Message, StringComparison.Ordinal);
    }

    // A given property overrides the library's: straw with a ratio of its own keeps the library's carbon.
    [Fact]
    public void Ingredient_RatioBesideAMaterial_OverridesTheNitrogenOnly()
    {
        const string Straw =
            "\"material\":\"wheat_straw\",\"amount\":{\"value\":10,\"unit\":\"kg\"}";
        var plain = Ask.Mix($"{{\"ingredients\":[{{{Straw}}}]}}").Json;
        var own = Ask.Mix($"{{\"ingredients\":[{{{Straw},\"carbon_nitrogen_ratio\":50}}]}}").Json;
        Assert.Equal(plain["carbon_kg"]!.ToJsonString(), own["carbon_kg"]!.ToJsonString());
        Assert.Equal(50, own["carbon_nitrogen_ratio"].Typical(), 1e-6);
    }

    private static JsonObject Mixed(string properties) =>
        Ask.Mix(
            $$"""
            {"ingredients":[{"name":"zzq",{{properties}},"moisture_pct_wb":50,"amount":{"value":10,"unit":"kg"} }]}
            """
        ).Json;
}
