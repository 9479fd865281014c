using System.Numerics;
using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Search;

/// <content>What scenarios can still reach in a box: evaluating certificates over all scenarios at once.</content>
internal sealed unsafe partial class BoxSearch
{
    private const int Lanes = 8;

    /// <summary>Share of the magnitude of a certificate's terms that rounding may cost.</summary>
    private const double Rounding = 1e-13;

    private readonly double[] _magnitude;
    private readonly double[] _rowMagnitude;
    private readonly double[] _mu;

    /// <summary>Largest magnitude a form can take over the whole problem, for the rounding allowance.</summary>
    private static double[] Magnitudes(PreparedProblem p, LinearForms forms)
    {
        var size = new double[forms.Count];
        for (int q = 0; q < forms.Count; q++)
        {
            ReadOnlySpan<double> row = forms.Row(q);
            size[q] = Math.Abs(row[p.N] * p.Source.FreeMaximum) + Math.Abs(row[p.N + 1]);
            for (int i = 0; i < p.N; i++)
            {
                size[q] += Math.Abs(row[i]) * p.Source.Upper[i];
            }
        }

        // Slices add the two forms of a pair.
        foreach ((int first, int second) in new[] { forms.PairA, forms.PairB })
        {
            if (first >= 0)
            {
                size[first] += size[second];
                size[second] = size[first];
            }
        }

        return size;
    }

    private static double[] RowMagnitudes(PreparedProblem p)
    {
        var size = new double[p.R];
        for (int r = 0; r < p.R; r++)
        {
            for (int s = 0; s < p.S; s++)
            {
                double sum = Math.Abs(p.Slope(r)) * p.Source.FreeMaximum;
                for (int i = 0; i < p.N; i++)
                {
                    sum +=
                        Math.Abs(p.Columns[(i * p.Stride) + (r * p.Padded) + s])
                        * p.Source.Upper[i];
                }

                size[r] = Math.Max(size[r], sum);
            }
        }

        return size;
    }

    /// <summary>Bound of one certificate for every scenario of the box, from scratch; also its coefficients from the forms.</summary>
    private void Evaluate(
        double[] rows,
        double[] lambda,
        double[] forms,
        double[] low,
        double[] high,
        double[] mu,
        double[] reach
    )
    {
        int n = _p.N;
        int width = _forms.Width;
        double slope = 0;
        double constant = 0;
        double rounding = 0;
        Array.Clear(mu);
        for (int q = 0; q < lambda.Length; q++)
        {
            double l = lambda[q];
            if (l == 0)
            {
                continue;
            }

            ReadOnlySpan<double> form = forms.AsSpan(q * width, width);
            for (int i = 0; i < n; i++)
            {
                mu[i] += l * form[i];
            }

            slope += l * form[n];
            constant += l * form[n + 1];
            rounding += l * _magnitude[q];
        }

        int* used = stackalloc int[_p.R];
        double* weight = stackalloc double[_p.R];
        int count = 0;
        for (int r = 0; r < _p.R; r++)
        {
            if (rows[r] > 0)
            {
                slope += rows[r] * _p.Slope(r);
                rounding += rows[r] * _rowMagnitude[r];
                weight[count] = rows[r];
                used[count++] = r * _p.Padded;
            }
        }

        constant += Math.Max(0, slope) * _p.Source.FreeMaximum;
        constant += Rounding * rounding;
        int padded = _p.Padded;
        int stride = _p.Stride;
        fixed (
            double* columns = _p.Columns,
                slack = _p.Slack,
                to = reach
        )
        {
            for (int s = 0; s < padded; s += Lanes)
            {
                var sum = Vector512.Create(constant);
                for (int k = 0; k < count; k++)
                {
                    sum += Vector512.Load(slack + used[k] + s) * weight[k];
                }

                double* column = columns + s;
                for (int i = 0; i < n; i++, column += stride)
                {
                    var a = Vector512.Create(mu[i]);
                    for (int k = 0; k < count; k++)
                    {
                        a += Vector512.Load(column + used[k]) * weight[k];
                    }

                    sum += Vector512.Max(a * low[i], a * high[i]);
                }

                sum.Store(to + s);
            }
        }
    }

    /// <summary>Bounds of a child that differs from its node in the range of one variable.</summary>
    private void Narrow(BoxNode node, BoxNode child, int i)
    {
        int padded = _p.Padded;
        int count = node.Certificates;
        child.Certificates = count;
        for (int c = 0; c < count; c++)
        {
            node.Rows[c].CopyTo(child.Rows[c], 0);
            node.Lambda[c].CopyTo(child.Lambda[c], 0);
            node.Mu[c].CopyTo(child.Mu[c], 0);
        }

        node.Least.CopyTo(child.Least, 0);
        var oldLow = Vector512.Create(node.Low[i]);
        var oldHigh = Vector512.Create(node.High[i]);
        var newLow = Vector512.Create(child.Low[i]);
        var newHigh = Vector512.Create(child.High[i]);
        int* used = stackalloc int[_p.R];
        double* weight = stackalloc double[_p.R];
        fixed (
            double* column = &_p.Columns[i * _p.Stride],
                least = child.Least
        )
        {
            for (int c = 0; c < count; c++)
            {
                int terms = Terms(node.Rows[c], used, weight);
                var mu = Vector512.Create(node.Mu[c][i]);
                fixed (
                    double* from = node.Reach[c],
                        to = child.Reach[c]
                )
                {
                    for (int s = 0; s < padded; s += Lanes)
                    {
                        Vector512<double> a = mu;
                        for (int k = 0; k < terms; k++)
                        {
                            a += Vector512.Load(column + used[k] + s) * weight[k];
                        }

                        Vector512<double> reach =
                            Vector512.Load(from + s)
                            - Vector512.Max(a * oldLow, a * oldHigh)
                            + Vector512.Max(a * newLow, a * newHigh);
                        reach.Store(to + s);
                        Vector512.Min(Vector512.Load(least + s), reach).Store(least + s);
                    }
                }
            }
        }

        child.Lost = CountLost(child.Least);
    }

    /// <summary>Bounds of a child with other forms.</summary>
    private void Recompute(BoxNode node, BoxNode child)
    {
        node.Least.CopyTo(child.Least, 0);
        child.Certificates = node.Certificates;
        for (int c = 0; c < node.Certificates; c++)
        {
            node.Rows[c].CopyTo(child.Rows[c], 0);
            node.Lambda[c].CopyTo(child.Lambda[c], 0);
            Evaluate(
                child.Rows[c],
                child.Lambda[c],
                child.Forms,
                child.Low,
                child.High,
                child.Mu[c],
                child.Reach[c]
            );
            Lower(child.Least, child.Reach[c]);
        }

        child.Lost = CountLost(child.Least);
    }

    private int Terms(double[] rows, int* used, double* weight)
    {
        int count = 0;
        for (int r = 0; r < rows.Length; r++)
        {
            if (rows[r] > 0)
            {
                weight[count] = rows[r];
                used[count++] = r * _p.Padded;
            }
        }

        return count;
    }

    private static void Lower(double[] least, double[] reach)
    {
        fixed (
            double* a = least,
                b = reach
        )
        {
            for (int s = 0; s < least.Length; s += Lanes)
            {
                Vector512.Min(Vector512.Load(a + s), Vector512.Load(b + s)).Store(a + s);
            }
        }
    }

    /// <summary>Scenarios whose bound is negative. Padding lanes are never negative while a scenario row takes part; when only forms do, the whole box is empty anyway.</summary>
    private static int CountLost(double[] least)
    {
        int lost = 0;
        fixed (double* a = least)
        {
            for (int s = 0; s < least.Length; s += Lanes)
            {
                lost += BitOperations.PopCount(
                    Vector512.ExtractMostSignificantBits(Vector512.Load(a + s))
                );
            }
        }

        return lost;
    }
}
