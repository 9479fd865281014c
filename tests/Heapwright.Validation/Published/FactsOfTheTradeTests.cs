using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.Validation.Published;

/// <summary>What everyone in the trade says; common practice, no source, unless named.</summary>
public class FactsOfTheTradeTests(ITestOutputHelper output)
{
    // One to two parts of dry leaves to one of fresh grass, by loose volume, is the usual way to a heap near 30:1; near is
    // taken as the preferred range, 25 to 35, rounded to whole numbers.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void LeavesAndGrass_OneOrTwoToOne_AreNearThirty(int leaves)
    {
        var ratio = Ask.Mix(
            $$"""
            {"ingredients":[{"material":"leaves_mixed_dry","amount":{"value":{{leaves}},"unit":"wheelbarrow"} },
                            {"material":"grass_clippings_fresh","amount":{"value":1,"unit":"wheelbarrow"} }]}
            """
        ).Json["carbon_nitrogen_ratio"];
        output.WriteLine($"{leaves} to 1: {ratio!.ToJsonString()}");
        Assert.InRange(Math.Round(ratio.Typical()), 25, 35);
    }

    // Wood chips are in the hundreds to one, and so is sawdust.
    [Theory]
    [InlineData("wood_chips_coarse")]
    [InlineData("softwood_chips")]
    [InlineData("sawdust_softwood")]
    [InlineData("sawdust_hardwood")]
    public void Wood_CarbonToNitrogen_IsInTheHundreds(string material) =>
        Assert.InRange(Ratio(material).Typical(), 100, 600);

    // Fresh grass is about 20:1 (printed: 12-19, 12-15 and 15-25 in three tables).
    [Theory]
    [InlineData("grass_clippings_fresh")]
    [InlineData("grass_clippings_wilted")]
    public void Grass_CarbonToNitrogen_IsAboutTwenty(string material) =>
        Assert.InRange(Ratio(material).Typical(), 15, 25);

    // Layers of 2 to 6 in (5 to 15 cm): every layer of a heap of leaves, grass and straw stays below 6 in, grass below 4 in
    // (Klickitat County, printed), and a brown with the green on it is 2 in at least. Base and cover are no such layers.
    [Theory]
    [InlineData(1.2, 1.2)]
    [InlineData(1.0, 1.0)]
    [InlineData(2.0, 1.5)]
    public void BuildPlan_Layers_AreTwoToSixInches(double length, double width)
    {
        var answer = Ask.Build(
            $$"""
            {"ingredients":[{"material":"leaves_mixed_dry","amount":{"value":8,"unit":"wheelbarrow"} },
                            {"material":"wheat_straw","amount":{"value":3,"unit":"wheelbarrow"} },
                            {"material":"grass_clippings_fresh","amount":{"value":5,"unit":"wheelbarrow"} }],
             "bin":{"length_m":{{Properties.Known.Text(length)}},"width_m":{{Properties.Known.Text(
                width
            )}},"height_m":1.2} }
            """
        );
        var layers = answer.Json["layers"]!
            .AsArray()
            .Where(l => l!["role"].Word() is not ("base" or "cover"))
            .ToList();
        Assert.True(layers.Count >= 4);
        double? before = null;
        foreach (var layer in layers)
        {
            var thick = layer!["thickness_cm"].Number();
            output.WriteLine($"{layer["role"].Word()} {thick:F1} cm");
            Assert.InRange(thick, 0.1, 15.24);
            if (layer["role"].Word() == "pair")
            {
                // Both halves in one layer: the grass in it keeps its own limit.
                var parts = layer["ingredients"]!.AsArray();
                var grass = parts
                    .Where(i => i!["material"].Word().StartsWith("grass", StringComparison.Ordinal))
                    .Sum(i => i!["l"].Number());
                Assert.InRange(thick * grass / parts.Sum(i => i!["l"].Number()), 0, 10.16);
                Assert.True(thick >= 5.08, $"{thick} cm");
            }
            else if (
                layer["ingredients"]!
                    .AsArray()
                    .Any(i => i!["material"].Word().StartsWith("grass", StringComparison.Ordinal))
            )
            {
                Assert.InRange(thick, 0.1, 10.16);
                if (before is { } brown)
                {
                    Assert.True(brown + thick >= 5.08, $"{brown} and {thick} cm");
                }
            }

            before = thick;
        }
    }

    private static JsonNode Ratio(string material) =>
        MaterialAnswers.Show(material)["carbon_nitrogen_ratio"]!;
}
