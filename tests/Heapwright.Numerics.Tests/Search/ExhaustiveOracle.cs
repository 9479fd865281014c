using Heapwright.Numerics.Search;

namespace Heapwright.Numerics.Tests.Search;

/// <summary>Tries every combination of whole amounts with plain loops. Slow and obvious: the oracle of the search tests.</summary>
internal static class ExhaustiveOracle
{
    /// <summary>All feasible amounts with their objectives, in no particular order.</summary>
    internal static List<(double[] X, double[] Z, int Held)> AllFeasible(ChanceProblem p)
    {
        var found = new List<(double[], double[], int)>();
        var x = (double[])p.Lower.Clone();
        while (true)
        {
            int held = Held(p, x);
            if (held >= 0 && held >= p.Chance * p.ScenarioCount - 1e-9)
            {
                double[] z =
                [
                    .. p.Objectives.Select(c =>
                        Enumerable.Range(0, p.Variables).Sum(i => c[i] * x[i])
                    ),
                ];
                found.Add(((double[])x.Clone(), z, held));
            }

            int at = 0;
            while (at < p.Variables && x[at] >= p.Upper[at])
            {
                x[at] = p.Lower[at];
                at++;
            }

            if (at == p.Variables)
            {
                return found;
            }

            x[at]++;
        }
    }

    /// <summary>The best objectives, ties resolved one objective after the other; null if nothing is feasible.</summary>
    internal static double[]? Best(List<(double[] X, double[] Z, int Held)> all)
    {
        if (all.Count == 0)
        {
            return null;
        }

        IEnumerable<(double[] X, double[] Z, int Held)> left = all;
        for (int o = 0; o < all[0].Z.Length; o++)
        {
            int objective = o;
            double least = left.Min(f => f.Z[objective]);
            left =
            [
                .. left.Where(f => f.Z[objective] <= least + (1e-9 * Math.Max(1, Math.Abs(least)))),
            ];
        }

        return left.First().Z;
    }

    /// <summary>Most scenarios that hold at one w which the nominal rows allow; −1 if limits or nominal rows fail or all amounts are zero.</summary>
    internal static int Held(ChanceProblem p, double[] x)
    {
        if (x.All(v => v == 0))
        {
            return -1;
        }

        for (int k = 0; k < p.Limits.Length; k++)
        {
            double[] g = p.LimitCoefficients[(k * p.Variables)..((k + 1) * p.Variables)];
            double slack = 1e-9 * Math.Max(Math.Abs(p.Limits[k]), g.Max(Math.Abs));
            if (g.Zip(x, (a, b) => a * b).Sum() > p.Limits[k] + slack)
            {
                return -1;
            }
        }

        if (Interval(p, x, -1) is not { } nominal)
        {
            return -1;
        }

        var intervals = new List<(double Low, double High)>();
        for (int s = 0; s < p.ScenarioCount; s++)
        {
            if (Interval(p, x, s) is { } i)
            {
                intervals.Add(i);
            }
        }

        // The best w is the lower end of some interval, or of the nominal one.
        IEnumerable<double> tries = intervals.Select(i => i.Low).Append(nominal.Low);
        return tries
            .Where(w => w >= nominal.Low && w <= nominal.High)
            .Max(w => intervals.Count(i => i.Low <= w && w <= i.High));
    }

    private static (double Low, double High)? Interval(ChanceProblem p, double[] x, int s)
    {
        double low = 0;
        double high = p.FreeMaximum;
        for (int r = 0; r < p.Rows; r++)
        {
            double sum = 0;
            double largest = 0;
            for (int i = 0; i < p.Variables; i++)
            {
                double a =
                    s < 0
                        ? p.Nominal[(r * p.Variables) + i]
                        : p.Scenarios[(((r * p.Variables) + i) * p.ScenarioCount) + s];
                sum += a * x[i];
                largest = Math.Max(largest, Math.Abs(a));
            }

            sum += 1e-9 * largest;
            double d = p.FreeSlopes[r];
            if (d == 0 && sum < 0)
            {
                return null;
            }

            if (d > 0)
            {
                low = Math.Max(low, -sum / d);
            }
            else if (d < 0)
            {
                high = Math.Min(high, sum / -d);
            }
        }

        return low <= high ? (low, high) : null;
    }
}
