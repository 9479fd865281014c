using Heapwright.Benchmarks.RecipeSearch;
using Heapwright.Numerics.Search;

namespace Heapwright.Numerics.Tests.Search;

/// <summary>
/// The search against a general solver (SCIP through OR-Tools) on random recipes small enough for it: the same status
/// and the same optimum.
/// </summary>
public sealed class GeneralSolverTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 20)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Solve_SmallRecipe_FindsTheOptimumOfAGeneralSolver(int seed)
    {
        var problem = RecipeInstances.Make(seed, materials: 6, scenarios: 24, most: 6);
        var peer = PeerMip.Solve("SCIP", problem, capSeconds: 30);
        Assert.True(peer.Proven, "the general solver gave up");

        var ours = ChanceSearch.Solve(problem, SearchBudget.Default);

        Assert.True(ours.ProvenBest);
        if (double.IsNaN(peer.Value))
        {
            Assert.Empty(ours.Amounts);
        }
        else
        {
            Assert.Equal(peer.Value, ours.Objectives[0], 1e-6);
        }
    }
}
