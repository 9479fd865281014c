using CsCheck;
using Heapwright.Numerics.Search;

namespace Heapwright.Numerics.Tests.Search;

public sealed class ChanceSearchTests
{
    [Fact]
    public void Solve_SmallProblems_AgreesWithTryingEverything()
    {
        RandomProblems.Any.Sample(
            p =>
            {
                List<(double[] X, double[] Z, int Held)> all = ExhaustiveOracle.AllFeasible(p);
                double[]? best = ExhaustiveOracle.Best(all);
                ChanceAnswer answer = ChanceSearch.Solve(p);
                if (best is null)
                {
                    Assert.Equal(SearchStatus.Infeasible, answer.Status);
                    Assert.Empty(answer.Amounts);
                    return;
                }

                Assert.Equal(SearchStatus.Optimal, answer.Status);
                for (int o = 0; o < best.Length; o++)
                {
                    Assert.Equal(
                        best[o],
                        answer.Objectives[o],
                        1e-8 * Math.Max(1, Math.Abs(best[o]))
                    );
                }

                Assert.Contains(all, f => f.X.SequenceEqual(answer.Amounts));
                Assert.Equal(
                    answer.Objectives[0],
                    answer.Bound,
                    1e-8 * Math.Max(1, Math.Abs(answer.Bound))
                );
                Assert.True(answer.FreeLow <= answer.Free && answer.Free <= answer.FreeHigh);
                Assert.Equal(
                    answer.Share,
                    ChanceSearch.ShareAt(p, answer.Amounts, answer.Free),
                    1e-12
                );
                Assert.True(answer.Share * p.ScenarioCount >= p.ScenariosNeeded - 1e-6);
            },
            iter: 2000,
            threads: 1,
            print: Describe
        );
    }

    [Fact]
    public void EvaluateShare_AnyAmounts_FindsTheBestFreeQuantity()
    {
        RandomProblems.Any.Sample(
            p =>
            {
                double[] x =
                [
                    .. p.Upper.Select((u, i) => Math.Max(p.Lower[i], Math.Floor(0.6 * u))),
                ];
                int held = ExhaustiveOracle.Held(p, x);
                ShareAnswer share = ChanceSearch.EvaluateShare(p, x);
                Assert.Equal(
                    held >= 0,
                    share.NominalHolds && share.LimitsHold && x.Any(v => v > 0)
                );
                if (held >= 0)
                {
                    bool stretchAtWanted = held >= p.ScenariosNeeded;
                    Assert.Equal(stretchAtWanted, share.Reached);
                    Assert.InRange(share.Free, share.FreeLow, share.FreeHigh);
                    if (!stretchAtWanted && p.ScenarioCount > 0)
                    {
                        Assert.Equal(held, share.Share * p.ScenarioCount, 1e-6);
                    }
                }
            },
            iter: 2000,
            threads: 1,
            print: Describe
        );
    }

    [Fact]
    public void Enumerate_SmallProblems_ListsTheBestInOrder()
    {
        RandomProblems.Any.Sample(
            p =>
            {
                const int Most = 7;
                const double Gap = 3;
                List<(double[] X, double[] Z, int Held)> all = ExhaustiveOracle.AllFeasible(p);
                IReadOnlyList<ChanceAnswer> list = ChanceSearch.Enumerate(p, Most, Gap);
                double least = all.Count == 0 ? 0 : all.Min(f => f.Z[0]);
                double[] expected =
                [
                    .. all.Select(f => f.Z[0])
                        .Where(z => z <= least + Gap + 1e-9)
                        .Order()
                        .Take(Most),
                ];
                Assert.Equal(expected.Length, list.Count);
                for (int i = 0; i < expected.Length; i++)
                {
                    Assert.Equal(expected[i], list[i].Objectives[0], 1e-8);
                    Assert.Equal(SearchStatus.Optimal, list[i].Status);
                    Assert.Contains(all, f => f.X.SequenceEqual(list[i].Amounts));
                }

                Assert.Equal(
                    list.Count,
                    list.Select(a => string.Join(',', a.Amounts))
                        .Distinct(StringComparer.Ordinal)
                        .Count()
                );
            },
            iter: 1000,
            threads: 1,
            print: Describe
        );
    }

    private static string Describe(ChanceProblem p) =>
        FormattableString.Invariant(
            $"n={p.Variables} S={p.ScenarioCount} chance={p.Chance} upper=[{string.Join(' ', p.Upper)}] lower=[{string.Join(' ', p.Lower)}]"
        );
}
