using System.Diagnostics;
using Google.OrTools.LinearSolver;
using Heapwright.Numerics.Search;

namespace Heapwright.Benchmarks.RecipeSearch;

/// <summary>
/// The same problem as a mixed-integer program for a general solver: one 0/1 variable per scenario switches its rows off by a
/// big-M that is as small as bounds and the volume limit allow. Objectives one after the other, each fixed before the next.
/// </summary>
internal static class PeerMip
{
    internal sealed record Outcome(
        string Status,
        double[] Objectives,
        double Milliseconds,
        double[] Amounts
    );

    internal static Outcome Solve(
        string solverName,
        ChanceProblem p,
        int objectives,
        double capSeconds
    )
    {
        var clock = Stopwatch.StartNew();
        using Solver solver =
            Solver.CreateSolver(solverName)
            ?? throw new InvalidOperationException($"{solverName} is not in this build.");
        if (!string.Equals(solverName, "HIGHS", StringComparison.Ordinal))
        {
            solver.SetNumThreads(1);
        }

        int n = p.Variables;
        Variable[] x =
        [
            .. Enumerable
                .Range(0, n)
                .Select(i => solver.MakeIntVar(p.Lower[i], p.Upper[i], $"x{i}")),
        ];
        Variable w = solver.MakeNumVar(0, p.FreeMaximum, "w");
        for (int k = 0; k < p.Limits.Length; k++)
        {
            Constraint limit = solver.MakeConstraint(double.NegativeInfinity, p.Limits[k]);
            for (int i = 0; i < n; i++)
            {
                limit.SetCoefficient(x[i], p.LimitCoefficients[(k * n) + i]);
            }
        }

        for (int r = 0; r < p.Rows; r++)
        {
            Constraint row = solver.MakeConstraint(0, double.PositiveInfinity);
            for (int i = 0; i < n; i++)
            {
                row.SetCoefficient(x[i], p.Nominal[(r * n) + i]);
            }

            row.SetCoefficient(w, p.FreeSlopes[r]);
        }

        Constraint share = solver.MakeConstraint(p.ScenariosNeeded, double.PositiveInfinity);
        for (int s = 0; s < p.ScenarioCount; s++)
        {
            Variable hold = solver.MakeBoolVar($"z{s}");
            share.SetCoefficient(hold, 1);
            for (int r = 0; r < p.Rows; r++)
            {
                double[] a = new double[n];
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

        var values = new List<double>();
        double[] amounts = [];
        string status = "OPTIMAL";
        for (int o = 0; o < objectives; o++)
        {
            Objective objective = solver.Objective();
            objective.Clear();
            objective.SetMinimization();
            for (int i = 0; i < n; i++)
            {
                objective.SetCoefficient(x[i], p.Objectives[o][i]);
            }

            double left = capSeconds - clock.Elapsed.TotalSeconds;
            if (left <= 0)
            {
                status = "TIME";
                break;
            }

            solver.SetTimeLimit((long)(left * 1000));
            using var parameters = new MPSolverParameters();
            parameters.SetDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, 1e-9);
            Solver.ResultStatus result = solver.Solve(parameters);
            if (result is not Solver.ResultStatus.OPTIMAL)
            {
                status =
                    clock.Elapsed.TotalSeconds > 0.95 * capSeconds ? "TIME" : result.ToString();
                if (result is Solver.ResultStatus.FEASIBLE)
                {
                    values.Add(objective.Value());
                }

                break;
            }

            amounts = [.. x.Select(v => Math.Round(v.SolutionValue()))];
            double value = Enumerable.Range(0, n).Sum(i => amounts[i] * p.Objectives[o][i]);
            values.Add(value);
            Constraint keep = solver.MakeConstraint(double.NegativeInfinity, value + 1e-6);
            for (int i = 0; i < n; i++)
            {
                keep.SetCoefficient(x[i], p.Objectives[o][i]);
            }
        }

        return new Outcome(status, [.. values], clock.Elapsed.TotalMilliseconds, amounts);
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
