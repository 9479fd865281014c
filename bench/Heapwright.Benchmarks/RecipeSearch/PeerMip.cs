using Google.OrTools.LinearSolver;
using Heapwright.Numerics.Search;

namespace Heapwright.Benchmarks.RecipeSearch;

/// <summary>
/// The same problem as a mixed-integer program for a general solver: one 0/1 variable per scenario switches its rows off by a
/// big-M that is as small as bounds and the volume limit allow.
/// </summary>
internal static class PeerMip
{
    /// <summary>The peers by the names of OR-Tools.</summary>
    internal static readonly string[] Names = ["SCIP", "SAT", "HIGHS"];

    /// <summary>Name and version as the solver states them.</summary>
    internal static string Version(string solverName)
    {
        // OR-Tools names another solver here; HiGHS prints its version itself when it starts.
        if (string.Equals(solverName, "HIGHS", StringComparison.Ordinal))
        {
            return "HiGHS (version in the line that it prints itself)";
        }

        using Solver solver = Create(solverName);
        return solver.SolverVersion();
    }

    /// <summary>Solves for the first objective on one thread.</summary>
    /// <param name="solverName">One of <see cref="Names"/>.</param>
    /// <param name="p">The problem.</param>
    /// <param name="capSeconds">Wall time after which the solver gives up.</param>
    internal static Outcome Solve(string solverName, ChanceProblem p, double capSeconds)
    {
        using Solver solver = Create(solverName);
        int n = p.Variables;
        Variable[] x =
        [
            .. Enumerable
                .Range(0, n)
                .Select(i =>
                    solver.MakeIntVar(p.Lower[i], p.Upper[i], string.Concat("x", Text(i)))
                ),
        ];
        Variable w = solver.MakeNumVar(0, p.FreeMaximum, "w");
        AddLimits(solver, p, x);
        AddNominal(solver, p, x, w);
        AddScenarios(solver, p, x, w);
        Objective objective = solver.Objective();
        objective.SetMinimization();
        for (int i = 0; i < n; i++)
        {
            objective.SetCoefficient(x[i], p.Objectives[0][i]);
        }

        solver.SetTimeLimit((long)(capSeconds * 1000));
        using var parameters = new MPSolverParameters();
        parameters.SetDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, 1e-9);
        double before = ProcessorClock.Milliseconds;
        Solver.ResultStatus status = solver.Solve(parameters);
        double milliseconds = ProcessorClock.Milliseconds - before;
        bool found = status is Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE;
        double[] amounts = found ? [.. x.Select(v => Math.Round(v.SolutionValue()))] : [];
        return new Outcome(
            status is Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.INFEASIBLE,
            found ? Enumerable.Range(0, n).Sum(i => amounts[i] * p.Objectives[0][i]) : double.NaN,
            amounts,
            milliseconds
        );
    }

    private static Solver Create(string name)
    {
        Solver solver =
            Solver.CreateSolver(name)
            ?? throw new InvalidOperationException($"{name} is not in this build of OR-Tools.");

        // HiGHS takes no number of threads here; its tree search runs on one.
        if (!string.Equals(name, "HIGHS", StringComparison.Ordinal))
        {
            solver.SetNumThreads(1);
        }

        solver.SuppressOutput();
        return solver;
    }

    private static string Text(int i) =>
        i.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static void AddLimits(Solver solver, ChanceProblem p, Variable[] x)
    {
        for (int k = 0; k < p.Limits.Length; k++)
        {
            Constraint limit = solver.MakeConstraint(double.NegativeInfinity, p.Limits[k]);
            for (int i = 0; i < x.Length; i++)
            {
                limit.SetCoefficient(x[i], p.LimitCoefficients[(k * x.Length) + i]);
            }
        }
    }

    private static void AddNominal(Solver solver, ChanceProblem p, Variable[] x, Variable w)
    {
        for (int r = 0; r < p.Rows; r++)
        {
            Constraint row = solver.MakeConstraint(0, double.PositiveInfinity);
            for (int i = 0; i < x.Length; i++)
            {
                row.SetCoefficient(x[i], p.Nominal[(r * x.Length) + i]);
            }

            row.SetCoefficient(w, p.FreeSlopes[r]);
        }
    }

    private static void AddScenarios(Solver solver, ChanceProblem p, Variable[] x, Variable w)
    {
        int n = x.Length;
        Constraint share = solver.MakeConstraint(p.ScenariosNeeded, double.PositiveInfinity);
        double[] a = new double[n];
        for (int s = 0; s < p.ScenarioCount; s++)
        {
            Variable hold = solver.MakeBoolVar(string.Concat("z", Text(s)));
            share.SetCoefficient(hold, 1);
            for (int r = 0; r < p.Rows; r++)
            {
                for (int i = 0; i < n; i++)
                {
                    a[i] = p.Scenarios[(((r * n) + i) * p.ScenarioCount) + s];
                }

                double big = -(Least(p, a) + Math.Min(0, p.FreeSlopes[r] * p.FreeMaximum));
                Constraint row = solver.MakeConstraint(-big, double.PositiveInfinity);
                for (int i = 0; i < n; i++)
                {
                    row.SetCoefficient(x[i], a[i]);
                }

                row.SetCoefficient(w, p.FreeSlopes[r]);
                row.SetCoefficient(hold, -big);
            }
        }
    }

    /// <summary>Least value of a·x over the bounds and the first limit (a knapsack, fractional): a small big-M.</summary>
    private static double Least(ChanceProblem p, double[] a)
    {
        int n = p.Variables;
        double room = p.Limits[0];
        double least = 0;
        for (int i = 0; i < n; i++)
        {
            least += a[i] * p.Lower[i];
            room -= p.LimitCoefficients[i] * p.Lower[i];
        }

        foreach (
            int i in Enumerable
                .Range(0, n)
                .Where(i => a[i] < 0)
                .OrderBy(i => a[i] / p.LimitCoefficients[i])
        )
        {
            double take = Math.Min(p.Upper[i] - p.Lower[i], room / p.LimitCoefficients[i]);
            least += a[i] * Math.Max(0, take);
            room -= p.LimitCoefficients[i] * Math.Max(0, take);
        }

        return least;
    }
}
