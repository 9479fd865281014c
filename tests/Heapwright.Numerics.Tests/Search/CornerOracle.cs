using Heapwright.Numerics.Search;

namespace Heapwright.Numerics.Tests.Search;

/// <summary>
/// Optimum of a problem with two continuous amounts (the first two) and at most one scenario: for every choice of the whole
/// amounts, all corners of the polyhedron in (x₀, x₁, w), that is all points where three constraints meet.
/// </summary>
internal static class CornerOracle
{
    internal static double? Best(ChanceProblem p, bool[] continuous)
    {
        Assert.True(continuous[0] && continuous[1] && !continuous[2..].Contains(true));
        double? best = null;
        double[] x = (double[])p.Lower.Clone();
        while (true)
        {
            Corners(p, x, ref best);
            int at = 2;
            while (at < p.Variables && x[at] >= p.Upper[at])
            {
                x[at] = p.Lower[at];
                at++;
            }

            if (at >= p.Variables)
            {
                return best;
            }

            x[at]++;
        }
    }

    private static void Corners(ChanceProblem p, double[] x, ref double? best)
    {
        // a·(x₀, x₁, w) + c ≥ 0
        var planes = new List<double[]>
        {
            new double[] { 1, 0, 0, -p.Lower[0] },
            new double[] { -1, 0, 0, p.Upper[0] },
            new double[] { 0, 1, 0, -p.Lower[1] },
            new double[] { 0, -1, 0, p.Upper[1] },
            new double[] { 0, 0, 1, 0 },
            new double[] { 0, 0, -1, p.FreeMaximum },
        };
        double Fixed(Func<int, double> a) =>
            Enumerable.Range(2, p.Variables - 2).Sum(i => a(i) * x[i]);
        for (int k = 0; k < p.Limits.Length; k++)
        {
            double A(int i) => -p.LimitCoefficients[(k * p.Variables) + i];
            planes.Add([A(0), A(1), 0, p.Limits[k] + Fixed(A)]);
        }

        for (int r = 0; r < p.Rows; r++)
        {
            double A(int i) => p.Nominal[(r * p.Variables) + i];
            planes.Add([A(0), A(1), p.FreeSlopes[r], Fixed(A)]);
            if (p.ScenarioCount == 1)
            {
                double B(int i) => p.Scenarios[(r * p.Variables) + i];
                planes.Add([B(0), B(1), p.FreeSlopes[r], Fixed(B)]);
            }
        }

        for (int a = 0; a < planes.Count; a++)
        {
            for (int b = a + 1; b < planes.Count; b++)
            {
                for (int c = b + 1; c < planes.Count; c++)
                {
                    if (Meet(planes[a], planes[b], planes[c]) is not { } point)
                    {
                        continue;
                    }

                    if (planes.TrueForAll(q => Value(q, point) >= -1e-9 * (q.Max(Math.Abs) + 1)))
                    {
                        double z =
                            (p.Objectives[0][0] * point[0]) + (p.Objectives[0][1] * point[1]);
                        z += Fixed(i => p.Objectives[0][i]);
                        best = best is null ? z : Math.Min(best.Value, z);
                    }
                }
            }
        }
    }

    private static double Value(double[] q, double[] at) =>
        (q[0] * at[0]) + (q[1] * at[1]) + (q[2] * at[2]) + q[3];

    private static double[]? Meet(double[] a, double[] b, double[] c)
    {
        static double Det(double[] u, double[] v, double[] w, int i, int j, int k) =>
            (u[i] * ((v[j] * w[k]) - (v[k] * w[j])))
            - (u[j] * ((v[i] * w[k]) - (v[k] * w[i])))
            + (u[k] * ((v[i] * w[j]) - (v[j] * w[i])));

        double det = Det(a, b, c, 0, 1, 2);
        if (Math.Abs(det) < 1e-10)
        {
            return null;
        }

        return
        [
            -Det(a, b, c, 3, 1, 2) / det,
            -Det(a, b, c, 0, 3, 2) / det,
            -Det(a, b, c, 0, 1, 3) / det,
        ];
    }
}
