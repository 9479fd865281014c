using System.Collections.Immutable;
using Heapwright.Core.FinishedCompost;

namespace Heapwright.Core.Tests.FinishedCompost;

/// <summary>How signs are weighed.</summary>
public class StageTests
{
    private static readonly StageClue Raw = Clue("heat", 0.6, 0.2, 0.1, 0.1);
    private static readonly StageClue Ripe = Clue("smell", 0.05, 0.05, 0.1, 0.8);

    [Fact]
    public void Nothing_Known_LeavesAllStagesAsLikely()
    {
        var stage = StageJudge.Judge([]);

        Assert.Equal([0.25, 0.25, 0.25, 0.25], stage.Chances);
        Assert.Null(stage.Stage);
    }

    // Bayes by hand: with even chances before, the chances after one clue are its likelihoods over their sum.
    [Fact]
    public void OneClue_IsBayesByHand()
    {
        var stage = StageJudge.Judge([Clue("heat", 0.5, 0.25, 0.125, 0.125)]);

        Assert.Equal([0.5, 0.25, 0.125, 0.125], stage.Chances.Select(c => Math.Round(c, 12)));
        Assert.Equal(CompostStage.Active, stage.Stage);
        Assert.Equal(0.5, stage.Reached(CompostStage.Cooling), 1e-12);
    }

    // Two groups count as 2^0.75 = 1.6818: each ratio is (a·b)^(1.6818/2).
    [Fact]
    public void TwoGroups_CountAsLessThanTwo()
    {
        var one = Clue("heat", 0.4, 0.2, 0.2, 0.2);
        var other = Clue("smell", 0.4, 0.2, 0.2, 0.2);

        var chances = StageJudge.Judge([one, other]).Chances;

        Assert.Equal(Math.Pow(4, 0.8408964), chances[0] / chances[1], 1e-6);
    }

    [Fact]
    public void TheSameSignTwice_CountsOnce() =>
        Assert.Equal(
            StageJudge.Judge([Ripe]).Chances.Select(c => Math.Round(c, 12)),
            StageJudge.Judge([Ripe, Ripe]).Chances.Select(c => Math.Round(c, 12))
        );

    [Fact]
    public void ClueOfLessWeight_MovesLess()
    {
        var strong = StageJudge.Judge([Ripe]);
        var weak = StageJudge.Judge([Ripe with { Weight = 0.3 }]);

        Assert.True(weak.Chances[3] < strong.Chances[3]);
        Assert.True(weak.Chances[3] > 0.25);
    }

    [Fact]
    public void CluesAgainstEachOther_AreNamed()
    {
        var against = Assert.Single(StageJudge.Judge([Ripe, Raw]).Contradictions);

        Assert.Equal((Raw, Ripe), against);
        Assert.Empty(StageJudge.Judge([Ripe, Ripe with { Group = "look" }]).Contradictions);
    }

    [Fact]
    public void NeighbouringStages_AreNoContradiction() =>
        Assert.Empty(
            StageJudge
                .Judge([Clue("heat", 0.1, 0.1, 0.7, 0.1), Clue("smell", 0.1, 0.1, 0.1, 0.7)])
                .Contradictions
        );

    [Fact]
    public void Chances_AreChances_WhateverTheClues()
    {
        var random = new Random(7);
        for (var round = 0; round < 200; round++)
        {
            ImmutableArray<StageClue> clues =
            [
                .. Enumerable
                    .Range(0, random.Next(12))
                    .Select(i =>
                        Clue(
                            "group " + random.Next(6),
                            random.NextDouble() + 1e-3,
                            random.NextDouble() + 1e-3,
                            random.NextDouble() + 1e-3,
                            random.NextDouble() + 1e-3
                        )
                    ),
            ];
            var stage = StageJudge.Judge(clues);
            Assert.Equal(1, stage.Chances.Sum(), 1e-9);
            Assert.All(stage.Chances, c => Assert.InRange(c, 0, 1));
            // The order of the list does not matter.
            Assert.Equal(
                stage.Chances.Select(c => Math.Round(c, 9)),
                StageJudge.Judge([.. clues.Reverse()]).Chances.Select(c => Math.Round(c, 9))
            );
        }
    }

    private static StageClue Clue(string group, params double[] likelihood) =>
        new(group, "sign", "found", [.. likelihood], 1);
}
