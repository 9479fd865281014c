using Heapwright.Numerics.Search;

namespace Heapwright.Benchmarks.RecipeSearch;

/// <summary>Whether amounts keep everything, by plain loops with no tolerance; shares no code with the search.</summary>
internal static class PlainCheck
{
    /// <summary>True if the limits hold, and at one w the nominal case and as many scenarios as are wanted.</summary>
    internal static bool Holds(ChanceProblem p, double[] x)
    {
        int n = p.Variables;
        for (int k = 0; k < p.Limits.Length; k++)
        {
            double sum = Enumerable.Range(0, n).Sum(i => p.LimitCoefficients[(k * n) + i] * x[i]);
            if (sum > p.Limits[k])
            {
                return false;
            }
        }

        if (Stretch(p, r => Sum(p, x, r, -1)) is not { } nominal)
        {
            return false;
        }

        var stretches = new List<(double Low, double High)>();
        for (int s = 0; s < p.ScenarioCount; s++)
        {
            int scenario = s;
            if (Stretch(p, r => Sum(p, x, r, scenario)) is { } found)
            {
                stretches.Add(found);
            }
        }

        // The best w is where some stretch begins.
        return stretches
            .Select(t => t.Low)
            .Append(nominal.Low)
            .Where(w => w >= nominal.Low && w <= nominal.High)
            .Any(w => stretches.Count(t => t.Low <= w && w <= t.High) >= p.ScenariosNeeded);
    }

    private static double Sum(ChanceProblem p, double[] x, int r, int s) =>
        Enumerable
            .Range(0, p.Variables)
            .Sum(i =>
                x[i]
                * (
                    s < 0
                        ? p.Nominal[(r * p.Variables) + i]
                        : p.Scenarios[(((r * p.Variables) + i) * p.ScenarioCount) + s]
                )
            );

    private static (double Low, double High)? Stretch(ChanceProblem p, Func<int, double> sum)
    {
        double low = 0;
        double high = p.FreeMaximum;
        for (int r = 0; r < p.Rows; r++)
        {
            double v = sum(r);
            double d = p.FreeSlopes[r];
            if (d == 0 && v < 0)
            {
                return null;
            }

            low = d > 0 ? Math.Max(low, -v / d) : low;
            high = d < 0 ? Math.Min(high, v / -d) : high;
        }

        return low <= high ? (low, high) : null;
    }
}
