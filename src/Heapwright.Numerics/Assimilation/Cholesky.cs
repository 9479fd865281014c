namespace Heapwright.Numerics.Assimilation;

/// <summary>The lower triangle L of a symmetric positive definite matrix A = L Lᵀ.</summary>
public sealed class Cholesky
{
    private readonly double[][] lower; // [row][column up to the row]

    private Cholesky(double[][] lower) => this.lower = lower;

    /// <summary>The size of the matrix.</summary>
    public int Size => lower.Length;

    /// <summary>The natural logarithm of the determinant of the matrix.</summary>
    public double LogDeterminant => 2 * lower.Sum(row => Math.Log(row[^1]));

    /// <summary>Factorises a matrix.</summary>
    /// <param name="matrix">Shape [row, column]: symmetric; only the lower triangle is read.</param>
    /// <exception cref="ArithmeticException">The matrix is not positive definite.</exception>
    public static Cholesky Of(double[,] matrix)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        var n = matrix.GetLength(0);
        if (matrix.GetLength(1) != n)
        {
            throw new ArgumentException("a square matrix is needed", nameof(matrix));
        }

        var rows = new double[n][];
        for (var i = 0; i < n; i++)
        {
            var row = rows[i] = new double[i + 1];
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[i, j] - Dot(row.AsSpan(0, j), rows[j]);
                if (j < i)
                {
                    row[j] = sum / rows[j][j];
                }
                else if (sum > 0)
                {
                    row[j] = Math.Sqrt(sum);
                }
                else
                {
                    throw new ArithmeticException("the matrix is not positive definite");
                }
            }
        }

        return new Cholesky(rows);
    }

    /// <summary>L x.</summary>
    /// <param name="x">Shape [size].</param>
    /// <returns>Shape [size].</returns>
    public double[] Times(ReadOnlySpan<double> x)
    {
        var y = new double[Size];
        for (var i = 0; i < y.Length; i++)
        {
            y[i] = Dot(x[..(i + 1)], lower[i]);
        }

        return y;
    }

    /// <summary>Solves L y = x in place.</summary>
    /// <param name="x">Shape [size]; receives y.</param>
    public void Whiten(Span<double> x)
    {
        for (var i = 0; i < Size; i++)
        {
            x[i] = (x[i] - Dot(x[..i], lower[i])) / lower[i][i];
        }
    }

    /// <summary>Solves A y = x in place.</summary>
    /// <param name="x">Shape [size]; receives y.</param>
    public void Solve(Span<double> x)
    {
        Whiten(x);
        for (var i = Size - 1; i >= 0; i--)
        {
            x[i] /= lower[i][i];
            for (var j = 0; j < i; j++)
            {
                x[j] -= lower[i][j] * x[i];
            }
        }
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
