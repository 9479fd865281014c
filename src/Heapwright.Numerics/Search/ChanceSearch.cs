namespace Heapwright.Numerics.Search;

/// <summary>Entry points of the exact search over amounts under a joint chance constraint; see <see cref="ChanceProblem"/>.</summary>
public static class ChanceSearch
{
    /// <summary>
    /// Finds the best amounts and proves it, or proves that there are none, as far as the budget allows. With continuous amounts the
    /// proof is to the accuracy of linear programs (1e-9 relative) when at most one scenario must hold; with more scenarios the
    /// continuous amounts are searched on a grid that is refined, and the answer is never called proven.
    /// </summary>
    /// <param name="problem">What is searched.</param>
    /// <param name="budget">When to end; null: <see cref="SearchBudget.Default"/>.</param>
    /// <returns>Status, amounts, free quantity, share, objectives, bound and nodes.</returns>
    /// <exception cref="ArgumentException">The problem or the budget is outside its range; names field, value and range.</exception>
    public static ChanceAnswer Solve(ChanceProblem problem, SearchBudget? budget = null)
    {
        ArgumentNullException.ThrowIfNull(problem);
        SearchBudget limits = budget ?? SearchBudget.Default;
        var clock = new SearchClock(limits);
        var prepared = new PreparedProblem(problem);
        if (!problem.Continuous.Contains(true))
        {
            return new StagedSearch(prepared, clock).Run();
        }

        // One scenario that must hold, or none, is a mixed-integer linear program; more are not.
        return problem.ScenarioCount <= 1 || problem.ScenariosNeeded == 0
            ? new MixedSearch(prepared, clock).Run()
            : new GridSearch(prepared, limits).Run();
    }

    /// <summary>
    /// Lists up to <paramref name="most"/> different feasible amounts whose first objective lies within <paramref name="gap"/> of the
    /// optimum, best first (all objectives, in order). The first entry is the answer of <see cref="Solve"/>.
    /// </summary>
    /// <param name="problem">What is searched; variables flagged continuous are not allowed here.</param>
    /// <param name="most">Most entries wanted, 1 to 10,000.</param>
    /// <param name="gap">Largest distance from the optimum of the first objective, absolute, ≥ 0.</param>
    /// <param name="budget">When to end; null: <see cref="SearchBudget.Default"/>.</param>
    /// <returns>The answers; status Optimal on each when the list is proven complete (or full), else Feasible. Empty when nothing was found.</returns>
    /// <exception cref="ArgumentException">An argument is outside its range; names field, value and range.</exception>
    public static IReadOnlyList<ChanceAnswer> Enumerate(
        ChanceProblem problem,
        int most,
        double gap,
        SearchBudget? budget = null
    )
    {
        ArgumentNullException.ThrowIfNull(problem);
        ChanceProblemCheck.Range(nameof(most), most, 1, 10_000);
        ChanceProblemCheck.Between(nameof(gap), gap, 0, 1e15);
        if (problem.Continuous.Contains(true))
        {
            throw new ArgumentException(
                "Continuous has a true entry; allowed is whole amounts only, since fractions cannot be listed.",
                nameof(problem)
            );
        }

        var clock = new SearchClock(budget ?? SearchBudget.Default);
        return new StagedSearch(new PreparedProblem(problem), clock).List(most, gap);
    }

    /// <summary>How well given amounts do: best share of scenarios over the free quantity, and whether limits and nominal rows hold.</summary>
    /// <param name="problem">What is judged.</param>
    /// <param name="amounts">The amounts, [variable], each 0 to <see cref="ChanceProblem.LargestAmount"/>; need not be whole nor inside the bounds.</param>
    /// <returns>The share, the free quantity, the stretch around it.</returns>
    /// <exception cref="ArgumentException">An argument is outside its range; names field, value and range.</exception>
    public static ShareAnswer EvaluateShare(ChanceProblem problem, ReadOnlySpan<double> amounts)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var prepared = new PreparedProblem(problem);
        ChanceProblemCheck.Amounts(problem, amounts);
        return new ShareSweep(prepared).Judge(amounts);
    }

    /// <summary>Share of the scenarios whose rows all hold at given amounts and a given free quantity.</summary>
    /// <param name="problem">What is judged.</param>
    /// <param name="amounts">The amounts, [variable].</param>
    /// <param name="free">The free quantity, 0 to FreeMaximum.</param>
    /// <returns>The share, 0 to 1; 1 without scenarios.</returns>
    /// <exception cref="ArgumentException">An argument is outside its range; names field, value and range.</exception>
    public static double ShareAt(ChanceProblem problem, ReadOnlySpan<double> amounts, double free)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var prepared = new PreparedProblem(problem);
        ChanceProblemCheck.Amounts(problem, amounts);
        ChanceProblemCheck.Between(nameof(free), free, 0, problem.FreeMaximum);
        return new ShareSweep(prepared).ShareAt(amounts, free);
    }

    /// <summary>
    /// Amounts that come closest to keeping the nominal rows and the limits, for explaining an infeasible problem. A local search
    /// from a fixed set of starts: good, deterministic, not proven. Where the violation can be brought to 0 it goes on to raise the share.
    /// </summary>
    /// <param name="problem">What is searched.</param>
    /// <returns>Amounts, free quantity and the violations that remain.</returns>
    /// <exception cref="ArgumentException">The problem is outside its range; names field, value and range.</exception>
    public static NearestAnswer NearestToFeasible(ChanceProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return new NearestSearch(new PreparedProblem(problem)).Run();
    }
}
