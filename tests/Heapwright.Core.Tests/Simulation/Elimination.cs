namespace Heapwright.Core.Tests.Simulation;

/// <summary>Gauss's elimination of a full system with the largest pivot in each column.</summary>
internal static class Elimination
{
    /// <summary>Solves.</summary>
    /// <param name="a">Shape [row, column], the right side in the last column; changed.</param>
    public static double[] Solve(double[,] a)
    {
        var n = a.GetLength(0);
        for (var c = 0; c < n; c++)
        {
            var best = c;
            for (var r = c + 1; r < n; r++)
            {
                best = Math.Abs(a[r, c]) > Math.Abs(a[best, c]) ? r : best;
            }

            for (var k = 0; k <= n; k++)
            {
                (a[c, k], a[best, k]) = (a[best, k], a[c, k]);
            }

            for (var r = c + 1; r < n; r++)
            {
                var share = a[r, c] / a[c, c];
                for (var k = c; k <= n; k++)
                {
                    a[r, k] -= share * a[c, k];
                }
            }
        }

        var x = new double[n];
        for (var r = n - 1; r >= 0; r--)
        {
            x[r] = a[r, n];
            for (var k = r + 1; k < n; k++)
            {
                x[r] -= a[r, k] * x[k];
            }

            x[r] /= a[r, r];
        }

        return x;
    }
}
