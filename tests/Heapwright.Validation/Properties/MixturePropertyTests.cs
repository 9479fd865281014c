using System.Text.Json.Nodes;
using CsCheck;

namespace Heapwright.Validation.Properties;

/// <summary>
/// What must hold of every mixture, whatever is mixed. The questions are drawn at random; where one fails, its seed is
/// printed and brings it back.
/// </summary>
public class MixturePropertyTests(ITestOutputHelper output)
{
    // Sums of doubles in another order, or of scaled doubles, differ by rounding only.
    private const double Rounding = 1e-9;

    [Fact]
    public void Mix_AllAmountsScaled_KeepsRatiosAndScalesTheRest() =>
        Gen.Select(Heaps.Any, Gen.Double[0.02, 50])
            .Sample(
                (heap, factor) =>
                {
                    var before = heap.Mixed();
                    var after = (
                        heap with
                        {
                            Parts =
                            [
                                .. heap.Parts.Select(p =>
                                    p with
                                    {
                                        Amount = p.Amount.Times(factor),
                                    }
                                ),
                            ],
                            Water = heap.Water * factor,
                        }
                    ).Mixed();
                    foreach (var field in Heap.Ratios)
                    {
                        Same(before[field], after[field], 1, field);
                    }

                    foreach (var field in Heap.Amounts)
                    {
                        Same(before[field], after[field], factor, field);
                    }
                },
                writeLine: output.WriteLine,
                iter: 60
            );

    [Fact]
    public void Mix_WaterAdded_ChangesMoistureAndWhatHangsOnItOnly() =>
        Gen.Select(Heaps.Any, Gen.Double[0.1, 60])
            .Sample(
                (heap, litres) =>
                {
                    var before = heap.Mixed();
                    var after = (heap with { Water = heap.Water + litres }).Mixed();
                    foreach (
                        var field in (string[])
                            [
                                "carbon_nitrogen_ratio",
                                "available_carbon_nitrogen_ratio",
                                "stiff_share_pct",
                                "dry_mass_kg",
                                "carbon_kg",
                                "nitrogen_kg",
                                "phosphorus_kg",
                                "potassium_kg",
                                "volume_l",
                                "filled_volume_l",
                            ]
                    )
                    {
                        Assert.Equal(before[field]?.ToJsonString(), after[field]?.ToJsonString());
                    }

                    foreach (var end in (string[])["low", "typical", "high"])
                    {
                        foreach (var field in (string[])["wet_mass_kg", "water_kg"])
                        {
                            var was = before[field]![end].Number();
                            Assert.Equal(
                                was + litres,
                                after[field]![end].Number(),
                                (was + litres) * Rounding
                            );
                        }

                        Assert.True(
                            after["moisture_pct_wb"]![end].Number()
                                > before["moisture_pct_wb"]![end].Number()
                        );
                        if (before["bulk_density_kg_m3"] is not null)
                        {
                            Assert.True(
                                after["bulk_density_kg_m3"]![end].Number()
                                    > before["bulk_density_kg_m3"]![end].Number()
                            );
                            Assert.True(
                                after["free_air_space_pct"]![end].Number()
                                    < before["free_air_space_pct"]![end].Number()
                            );
                        }
                    }
                },
                writeLine: output.WriteLine,
                iter: 60
            );

    [Fact]
    public void Mix_ListedInAnotherOrder_GivesTheSameBytes() =>
        Gen.Select(Heaps.Any, Gen.Int[0, int.MaxValue])
            .Sample(
                (heap, shuffle) =>
                {
                    var order = new Random(shuffle);
                    var other = heap with
                    {
                        Parts = [.. heap.Parts.OrderBy(_ => order.Next()).ToArray()],
                    };
                    Assert.Equal(Heap.Figures(heap.Mixed()), Heap.Figures(other.Mixed()));
                },
                writeLine: output.WriteLine,
                iter: 100
            );

    [Fact]
    public void Mix_OneIngredientSplitInTwo_ChangesNothing() =>
        Gen.Select(Heaps.Any, Gen.Double[0.05, 0.95], Gen.Int[0, 100])
            .Sample(
                (heap, share, which) =>
                {
                    var split = heap.Parts[which % heap.Parts.Count];
                    var other = heap with
                    {
                        Parts =
                        [
                            .. heap.Parts.Where(p => !ReferenceEquals(p, split)),
                            split with
                            {
                                Amount = split.Amount.Times(share),
                            },
                            split with
                            {
                                Amount = split.Amount.Times(1 - share),
                            },
                        ],
                    };
                    var (before, after) = (heap.Mixed(), other.Mixed());
                    foreach (var field in Heap.Amounts.Concat(Heap.Ratios))
                    {
                        Same(before[field], after[field], 1, field);
                    }
                },
                writeLine: output.WriteLine,
                iter: 60
            );

    // Kilograms are added and then divided, so a mixture of exact stuff lies between its ingredients, ends included.
    [Fact]
    public void Mix_ExactStuff_LiesBetweenItsIngredients() =>
        Heaps.Exact.Sample(
            heap =>
            {
                var answer = (heap with { Water = 0 }).Mixed();
                Between(
                    answer["carbon_nitrogen_ratio"].Typical(),
                    heap.Parts.Select(p => p.Carbon!.Value.Typical / p.Nitrogen!.Value.Typical)
                );
                Between(
                    answer["moisture_pct_wb"].Typical(),
                    heap.Parts.Select(p => p.Moisture!.Value.Typical)
                );
                Between(AshOf(answer), heap.Parts.Select(p => p.Ash!.Value.Typical));
            },
            writeLine: output.WriteLine,
            iter: 100
        );

    // In each of the 1,024 cases the mixture lies between its ingredients, so it lies below the lowest of their low ends
    // only where some ingredient lies below its own: in at most 5 % of the cases for each, which for five is less than
    // half. The middle of the mixture can therefore not fall below the lowest low end, nor rise above the highest high end.
    [Fact]
    public void Mix_RangesOfAnyKind_MiddleLiesBetweenTheOutermostEnds() =>
        Heaps.Any.Sample(
            heap =>
            {
                var answer = (heap with { Water = 0 }).Mixed();
                var alone = heap
                    .Parts.Select(p => (heap with { Parts = [p], Water = 0 }).Mixed())
                    .ToList();
                foreach (var field in (string[])["carbon_nitrogen_ratio", "moisture_pct_wb"])
                {
                    Between(
                        answer[field].Typical(),
                        alone.SelectMany(a => (double[])[a[field].Low(), a[field].High()])
                    );
                }
            },
            writeLine: output.WriteLine,
            iter: 40
        );

    [Fact]
    public void Mix_ExactInputs_GiveThreeEqualNumbers() =>
        Heaps.Exact.Sample(
            heap =>
            {
                var answer = heap.Mixed();
                foreach (var field in Heap.Amounts.Concat(Heap.Ratios))
                {
                    Assert.Equal(answer[field].Low(), answer[field].Typical());
                    Assert.Equal(answer[field].Typical(), answer[field].High());
                }
            },
            writeLine: output.WriteLine,
            iter: 60
        );

    // The note on averages quotes the balance; it must be the figure that stands in the same answer.
    [Fact]
    public void Mix_NoteOnAverages_QuotesTheRatioOfTheSameAnswer()
    {
        var answer = Ask.Mix(
            """
            {"ingredients":[{"material":"wood_chips_coarse","amount":{"value":4,"unit":"wheelbarrow"}},
                            {"material":"grass_clippings_fresh","amount":{"value":4,"unit":"wheelbarrow"}}]}
            """
        ).Json;
        var ratio = Math.Round(answer["carbon_nitrogen_ratio"].Typical());
        Assert.Contains(
            answer["notes"]!.AsArray(),
            n => n.Word().Contains($"balance says {ratio}:1", StringComparison.Ordinal)
        );
    }

    // Ash is not among the figures, but the air space gives it away: of the filled volume water takes 1 l a kg, organic
    // matter 1/1.6 and ash 1/2.5, and what is left is air.
    private static double AshOf(JsonObject answer)
    {
        var filled = answer["filled_volume_l"].Typical();
        var taken = filled * (1 - (answer["free_air_space_pct"].Typical() / 100));
        var dry = answer["dry_mass_kg"].Typical();
        var water = answer["water_kg"].Typical();
        return 100 * (taken - water - (dry / 1.6)) / ((1 / 2.5) - (1 / 1.6)) / dry;
    }

    private static void Between(double value, IEnumerable<double> ends)
    {
        var all = ends.ToList();
        Assert.InRange(value, all.Min() * (1 - 1e-7), all.Max() * (1 + 1e-7));
    }

    private static void Same(JsonNode? before, JsonNode? after, double factor, string field)
    {
        if (before is null)
        {
            Assert.Null(after);
            return;
        }

        foreach (var end in (string[])["low", "typical", "high"])
        {
            var expected = before[end].Number() * factor;
            // Air space is a small difference of large numbers in a heap that is full of water.
            var slack =
                Rounding
                * Math.Max(
                    Math.Abs(expected),
                    field.EndsWith("_pct", StringComparison.Ordinal) ? 100 : 0
                );
            Assert.Equal(expected, after![end].Number(), slack);
        }
    }
}
