using CsCheck;
using Heapwright.Numerics.Search;

namespace Heapwright.Numerics.Tests.Search;

public sealed class ContinuousSearchTests
{
    /// <summary>
    /// Minimise 3a + 2b with a + b ≥ 4, a ≥ b (a flat row), a ≤ 3, b ≤ 3. By hand: the corner a = b = 2 costs 10; a = 3, b = 1 costs 11;
    /// so 10, at (2, 2).
    /// </summary>
    [Fact]
    public void Solve_TwoContinuousByHand_FindsTheCorner()
    {
        ChanceAnswer answer = ChanceSearch.Solve(ByHand([true, true], 4));

        Assert.Equal(SearchStatus.Optimal, answer.Status);
        Assert.Equal(10, answer.Objectives[0], 1e-8);
        Assert.Equal(2, answer.Amounts[0], 1e-8);
        Assert.Equal(2, answer.Amounts[1], 1e-8);
        Assert.Equal(10, answer.Bound, 1e-8);
    }

    /// <summary>With a + b ≥ 4.5 the corner is a = b = 2.25 (cost 11.25); with whole a it is a = 3, b = 1.5 (cost 12).</summary>
    [Theory]
    [InlineData(true, true, 11.25)]
    [InlineData(false, true, 12)]
    public void Solve_WholeAndContinuousByHand_BranchesOnTheWholeOne(bool a, bool b, double cost)
    {
        ChanceAnswer answer = ChanceSearch.Solve(ByHand([a, b], 4.5));

        Assert.Equal(SearchStatus.Optimal, answer.Status);
        Assert.Equal(cost, answer.Objectives[0], 1e-8);
    }

    [Fact]
    public void Solve_ContinuousAmountsThatCannotBe_IsProvenInfeasible()
    {
        ChanceAnswer answer = ChanceSearch.Solve(ByHand([true, true], 6.5));

        Assert.Equal(SearchStatus.Infeasible, answer.Status);
        Assert.Equal(double.PositiveInfinity, answer.Bound);
    }

    [Fact]
    public void Solve_SmallContinuousProblems_AgreesWithAllCorners()
    {
        int feasible = 0;
        Gen.UInt.Sample(
            seed =>
            {
                ChanceProblem p = Relaxed((int)(seed & 0x7fffffff), out bool[] continuous);
                double? best = CornerOracle.Best(p, continuous);
                ChanceAnswer answer = ChanceSearch.Solve(p);
                if (best is null)
                {
                    Assert.Equal(SearchStatus.Infeasible, answer.Status);
                    return;
                }

                Interlocked.Increment(ref feasible);
                Assert.Equal(SearchStatus.Optimal, answer.Status);
                Assert.Equal(
                    best.Value,
                    answer.Objectives[0],
                    1e-6 * Math.Max(1, Math.Abs(best.Value))
                );
                Assert.True(ChanceSearch.EvaluateShare(p, answer.Amounts).Reached);
            },
            iter: 400,
            threads: 1
        );
        Assert.InRange(feasible, 20, 400);
    }

    /// <summary>The grid may miss the optimum, but what it gives must be feasible, no better than the nominal bound, and never called proven.</summary>
    [Fact]
    public void Solve_ContinuousWithScenarios_IsFeasibleAndNotCalledProven()
    {
        int found = 0;
        for (int seed = 0; seed < 40; seed++)
        {
            ChanceProblem whole = RandomProblems.Make(seed);
            if (whole.ScenarioCount < 2 || whole.ScenariosNeeded == 0)
            {
                continue;
            }

            ChanceProblem p = With(whole, [.. Enumerable.Repeat(true, whole.Variables)]);
            ChanceAnswer answer = ChanceSearch.Solve(p, new SearchBudget { Nodes = 20_000 });
            if (answer.Amounts.Length == 0)
            {
                continue;
            }

            found++;
            Assert.Equal(SearchStatus.Feasible, answer.Status);
            Assert.False(answer.ProvenBest);
            Assert.True(ChanceSearch.EvaluateShare(p, answer.Amounts).Reached);
            Assert.True(answer.Bound <= answer.Objectives[0] + 1e-6);
        }

        Assert.InRange(found, 3, 40);
    }

    [Fact]
    public void Enumerate_ContinuousAmounts_AreRefused()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() =>
            ChanceSearch.Enumerate(ByHand([true, true], 4), 3, 1)
        );
        Assert.Contains("whole amounts only", error.Message, StringComparison.Ordinal);
    }

    private static ChanceProblem ByHand(bool[] continuous, double least) =>
        new()
        {
            Lower = [0, 0],
            Upper = [3, 3],
            Continuous = continuous,
            Objectives =
            [
                [3, 2],
            ],
            FreeSlopes = [0],
            Nominal = [1, -1],
            LimitCoefficients = [-1, -1],
            Limits = [-least],
        };

    private static ChanceProblem Relaxed(int seed, out bool[] continuous)
    {
        ChanceProblem p;
        int at = seed;
        do
        {
            p = RandomProblems.Make(at++ & 0x7fffffff);
        } while (
            p.ScenarioCount > 1
            || p.Variables is < 2 or > 4
            || p.Lower.All(l => l == 0)
            || p.Chance == 0
        );

        bool[] flags = new bool[p.Variables];
        flags[0] = true;
        flags[1] = true;
        continuous = flags;
        return With(p, flags);
    }

    private static ChanceProblem With(ChanceProblem p, bool[] continuous) =>
        new()
        {
            Lower = p.Lower,
            Upper = p.Upper,
            Continuous = continuous,
            Objectives = p.Objectives,
            FreeSlopes = p.FreeSlopes,
            Nominal = p.Nominal,
            ScenarioCount = p.ScenarioCount,
            Scenarios = p.Scenarios,
            Chance = p.Chance,
            FreeMaximum = p.FreeMaximum,
            FreePreferred = p.FreePreferred,
            LimitCoefficients = p.LimitCoefficients,
            Limits = p.Limits,
        };
}
