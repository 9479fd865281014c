using System.Text.Json.Nodes;

namespace Heapwright.Validation.Recipes;

/// <summary>The usual aims advise: they never refuse a heap that heats, and they do not praise one that will slump.</summary>
public class DefaultAimTests
{
    // Equal barrows of coarse chips and fresh grass are far above 35:1 in all their carbon, and heat well (common practice,
    // no source).
    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(8)]
    public void Recipe_EqualBarrowsOfChipsAndGrass_IsBuiltAndHeats(int barrows)
    {
        var answer = Ask.Recipe(
            $$"""
            {"have":[{"material":"wood_chips_coarse","amount":{"value":{{barrows}},"unit":"wheelbarrow"},"must_use":true},
                     {"material":"grass_clippings_fresh","amount":{"value":{{barrows}},"unit":"wheelbarrow"},"must_use":true}]}
            """
        );
        Assert.True(answer.Yes, answer.Text);
        var plan = answer.Json["plans"]![0]!;
        Assert.True(plan["mixture"]!["carbon_nitrogen_ratio"].Typical() > 35);
        Assert.Equal("yes", plan["expect"]!["heats"].Word());
        Assert.Equal("good", Status(plan, "stiff_share_pct"));
        Assert.Equal("good", Status(plan, "free_air_space_settled_pct"));
    }

    // Ten barrows of grass to three of leaves have air on paper and slump to slime (common practice, no source).
    [Fact]
    public void Recipe_TenBarrowsOfGrassToThreeOfLeaves_IsSaidToSlump()
    {
        var answer = Ask.Recipe(
            """
            {"have":[{"material":"grass_clippings_fresh","amount":{"value":10,"unit":"wheelbarrow"},"must_use":true},
                     {"material":"leaves_mixed_dry","amount":{"value":3,"unit":"wheelbarrow"},"must_use":true}]}
            """
        );
        Assert.False(answer.Yes);
        Assert.Equal("falls_short", answer.Json["status"].Word());
        var plan = answer.Json["plans"]![0]!;
        Assert.Equal("low", Status(plan, "stiff_share_pct"));
        Assert.Equal("high", Status(plan, "moisture_pct_wb"));
        Assert.Contains(
            plan["notes"]!.AsArray(),
            n => n.Word().Contains("slump", StringComparison.Ordinal)
        );
        Assert.Equal(0, plan["water_l"].Number());
        Assert.Contains(
            answer.Json["shortfalls"]!.AsArray(),
            s => s!["what"].Word() is "dryness" or "air"
        );
    }

    // Grass alone slumps, chips alone stay cold: neither is called a good heap.
    [Theory]
    [InlineData("grass_clippings_fresh")]
    [InlineData("wood_chips_coarse")]
    [InlineData("sawdust_softwood")]
    public void Recipe_OneStuffAlone_IsNotPraised(string material)
    {
        var answer = Ask.Recipe(
            $$"""{"have":[{"material":"{{material}}","amount":{"value":10,"unit":"wheelbarrow"},"must_use":true}]}"""
        );
        Assert.False(answer.Yes, answer.Text);
        Assert.NotEmpty(answer.Json["shortfalls"]!.AsArray());
    }

    // A third of a cubic metre in 2 °C air does not start; a cubic metre and a half in summer does.
    [Theory]
    [InlineData(1, 2, false)]
    [InlineData(7, 20, true)]
    public void Recipe_SizeAndAir_DecideWhetherItHeats(int barrows, int air, bool heats)
    {
        var answer = Ask.Recipe(
            $$"""
            {"have":[{"material":"horse_manure_straw","amount":{"value":{{2
                * barrows}},"unit":"wheelbarrow"},"must_use":true},
                     {"material":"grass_clippings_fresh","amount":{"value":{{barrows}},"unit":"wheelbarrow"},"must_use":true}],
             "weather":{"air_c":{{air}} } }
            """
        );
        var said = answer.Json["plans"]![0]!["expect"]!["heats"].Word();
        Assert.Equal(heats, said == "yes");
    }

    private static string Status(JsonNode plan, string quantity) =>
        plan["mixture"]!["verdicts"]!
            .AsArray()
            .Single(v => v!["quantity"].Word() == quantity)!["status"]
            .Word();
}
