using System.Numerics;
using System.Runtime.InteropServices;

namespace Heapwright.Numerics.Search;

/// <summary>
/// A checked problem in the layout the search works on: rows sorted (flat, then lower bounds on w, then upper bounds on w)
/// and divided by |slope|, scenarios contiguous and padded to whole vectors with lanes that never fail.
/// </summary>
internal sealed class PreparedProblem
{
    /// <summary>Relative slack of rows and limits, and relative width within which objectives are equal.</summary>
    internal const double Tolerance = 1e-9;

    /// <summary>Slack of the padding lanes: they hold whatever the amounts.</summary>
    private const double PaddingSlack = 1e100;

    private const int Lanes = 8;

    internal PreparedProblem(ChanceProblem p)
    {
        p.Check();
        Source = p;
        N = p.Variables;
        R = p.Rows;
        S = p.ScenarioCount;
        Padded = (S + Lanes - 1) / Lanes * Lanes;
        Need = p.ScenariosNeeded;
        RowOrder = [.. Enumerable.Range(0, R).OrderBy(r => Kind(p.FreeSlopes[r]))];
        FlatRows = p.FreeSlopes.Count(d => d == 0);
        LowerRows = p.FreeSlopes.Count(d => d > 0);
        UpperRows = R - FlatRows - LowerRows;
        Stride = R * Padded;
        Columns = new double[N * Stride];
        Slack = new double[Stride];
        NominalColumns = new double[N * R];
        NominalSlack = new double[R];
        FillRows(p);
        K = p.Limits.Length;
        Limits = new double[K];
        for (int k = 0; k < K; k++)
        {
            double scale = Math.Abs(p.Limits[k]);
            for (int i = 0; i < N; i++)
            {
                scale = Math.Max(scale, Math.Abs(p.LimitCoefficients[(k * N) + i]));
            }

            Limits[k] = p.Limits[k] + (Tolerance * scale);
        }
    }

    internal ChanceProblem Source { get; }

    /// <summary>Number of variables.</summary>
    internal int N { get; }

    /// <summary>Number of rows.</summary>
    internal int R { get; }

    /// <summary>Number of scenarios.</summary>
    internal int S { get; }

    /// <summary>Number of limits.</summary>
    internal int K { get; }

    /// <summary>Scenarios rounded up to whole vectors.</summary>
    internal int Padded { get; }

    /// <summary>Doubles per variable in <see cref="Columns"/>: R·Padded.</summary>
    internal int Stride { get; }

    /// <summary>Scenarios that must hold.</summary>
    internal int Need { get; }

    /// <summary>Rows that do not see w; they come first.</summary>
    internal int FlatRows { get; }

    /// <summary>Rows of the form w ≥ −(sum); they come second.</summary>
    internal int LowerRows { get; }

    /// <summary>Rows of the form w ≤ (sum); they come last.</summary>
    internal int UpperRows { get; }

    /// <summary>Place in the source of each sorted row, [row].</summary>
    internal int[] RowOrder { get; }

    /// <summary>Scaled coefficients, [variable, row, scenario].</summary>
    internal double[] Columns { get; }

    /// <summary>Scaled slack of each row, [row, scenario]; the sums start from it.</summary>
    internal double[] Slack { get; }

    /// <summary>Scaled nominal coefficients, [variable, row].</summary>
    internal double[] NominalColumns { get; }

    /// <summary>Scaled nominal slack, [row].</summary>
    internal double[] NominalSlack { get; }

    /// <summary>Limits with their tolerance added, [limit].</summary>
    internal double[] Limits { get; }

    /// <summary>Adds <paramref name="factor"/> times the column of variable <paramref name="i"/> to the sums, [row, scenario].</summary>
    internal void Add(int i, double factor, Span<double> sums)
    {
        Span<Vector<double>> target = MemoryMarshal.Cast<double, Vector<double>>(sums[..Stride]);
        ReadOnlySpan<Vector<double>> column = MemoryMarshal.Cast<double, Vector<double>>(
            Columns.AsSpan(i * Stride, Stride)
        );
        var by = new Vector<double>(factor);
        for (int v = 0; v < target.Length && v < column.Length; v++)
        {
            target[v] += by * column[v];
        }
    }

    /// <summary>Row sums of all scenarios at x, slack included, [row, scenario]; always in the order of the variables, so the same x gives the same bits.</summary>
    internal void Sums(ReadOnlySpan<double> x, Span<double> sums)
    {
        Slack.CopyTo(sums);
        for (int i = 0; i < N; i++)
        {
            if (x[i] != 0)
            {
                Add(i, x[i], sums);
            }
        }
    }

    /// <summary>The interval of w that the nominal rows leave at x; false if it is empty.</summary>
    internal bool NominalInterval(ReadOnlySpan<double> x, out double low, out double high)
    {
        low = 0;
        high = Source.FreeMaximum;
        for (int r = 0; r < R; r++)
        {
            double sum = NominalSlack[r];
            for (int i = 0; i < N; i++)
            {
                sum += x[i] * NominalColumns[(i * R) + r];
            }

            if (r < FlatRows)
            {
                if (sum < 0)
                {
                    return false;
                }
            }
            else if (r < FlatRows + LowerRows)
            {
                low = Math.Max(low, -sum);
            }
            else
            {
                high = Math.Min(high, sum);
            }
        }

        return low <= high;
    }

    /// <summary>True if all rows without uncertainty hold at x.</summary>
    internal bool LimitsHold(ReadOnlySpan<double> x)
    {
        for (int k = 0; k < K; k++)
        {
            double sum = 0;
            for (int i = 0; i < N; i++)
            {
                sum += x[i] * Source.LimitCoefficients[(k * N) + i];
            }

            if (sum > Limits[k])
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Value of one objective at x.</summary>
    internal double Objective(int o, ReadOnlySpan<double> x)
    {
        double sum = 0;
        double[] c = Source.Objectives[o];
        for (int i = 0; i < N; i++)
        {
            sum += c[i] * x[i];
        }

        return sum;
    }

    /// <summary>The preferred free quantity at x, clipped to its interval.</summary>
    internal double Preferred(ReadOnlySpan<double> x)
    {
        double w = Source.FreePreferred;
        for (int i = 0; i < Source.FreePreferredSlopes.Length; i++)
        {
            w += Source.FreePreferredSlopes[i] * x[i];
        }

        return Math.Clamp(w, 0, Source.FreeMaximum);
    }

    /// <summary>Width within which two values of an objective are equal.</summary>
    internal static double Width(double value) => Tolerance * Math.Max(1, Math.Abs(value));

    /// <summary>Slope of sorted row <paramref name="r"/> in w after scaling: 0, +1 or −1.</summary>
    internal int Slope(int r)
    {
        if (r < FlatRows)
        {
            return 0;
        }

        return r < FlatRows + LowerRows ? 1 : -1;
    }

    private static int Kind(double slope) =>
        slope switch
        {
            0 => 0,
            > 0 => 1,
            _ => 2,
        };

    private void FillRows(ChanceProblem p)
    {
        for (int sorted = 0; sorted < R; sorted++)
        {
            int r = RowOrder[sorted];
            double scale = p.FreeSlopes[r] == 0 ? 1 : 1 / Math.Abs(p.FreeSlopes[r]);
            double largest = 0;
            for (int i = 0; i < N; i++)
            {
                double a = p.Nominal[(r * N) + i] * scale;
                NominalColumns[(i * R) + sorted] = a;
                largest = Math.Max(largest, Math.Abs(a));
            }

            NominalSlack[sorted] = Tolerance * largest;
            Slack.AsSpan((sorted * Padded) + S, Padded - S).Fill(PaddingSlack);
            Span<double> slack = Slack.AsSpan(sorted * Padded, S);
            for (int i = 0; i < N; i++)
            {
                Span<double> to = Columns.AsSpan((i * Stride) + (sorted * Padded), S);
                ReadOnlySpan<double> from = p.Scenarios.AsSpan(((r * N) + i) * S, S);
                for (int s = 0; s < S; s++)
                {
                    to[s] = from[s] * scale;
                    slack[s] = Math.Max(slack[s], Tolerance * Math.Abs(to[s]));
                }
            }
        }
    }
}
