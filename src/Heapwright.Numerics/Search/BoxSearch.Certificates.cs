using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Search;

/// <content>What scenarios can still reach in a box: evaluating certificates over all scenarios at once, in single precision with allowance.</content>
internal sealed unsafe partial class BoxSearch
{
    private const int Lanes = 16;

    /// <summary>Times a bound is carried over before it is worked out anew, so that its rounding stays within the allowance.</summary>
    private const int MostNarrowings = 100;

    private readonly double[] _magnitude;
    private readonly double _rounding;
    private readonly float[] _mu;

    /// <summary>
    /// Share of the magnitude of a certificate's terms that rounding to single precision may cost: a few units of 2⁻²⁴ for every
    /// coefficient converted, every term added, and every time the bound is carried over to a smaller box.
    /// </summary>
    private static double RoundingShare(PreparedProblem p) =>
        ((4 * p.N) + (4 * p.R) + 32 + (4 * MostNarrowings)) * Math.Pow(2, -24);

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

    /// <summary>Bound of one certificate for every scenario of the box, from scratch; also its coefficients from the forms.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Evaluate(
        double[] rows,
        double[] lambda,
        double[] forms,
        double[] low,
        double[] high,
        float[] mu,
        float[] reach
    )
    {
        int n = _p.N;
        int width = _forms.Width;
        double slope = 0;
        double constant = 0;
        double magnitude = 0;
        double* sums = stackalloc double[n];
        for (int q = 0; q < lambda.Length; q++)
        {
            double l = lambda[q];
            if (l == 0)
            {
                continue;
            }

            fixed (double* form = &forms[q * width])
            {
                for (int i = 0; i < n; i++)
                {
                    sums[i] += l * form[i];
                }

                slope += l * form[n];
                constant += l * form[n + 1];
                magnitude += l * _magnitude[q];
            }
        }

        int* used = stackalloc int[_p.R];
        float* weight = stackalloc float[_p.R];
        int terms = 0;
        for (int r = 0; r < _p.R; r++)
        {
            if (rows[r] > 0)
            {
                slope += rows[r] * _single.Slope[r];
                magnitude += rows[r] * SingleRows.Size;
                weight[terms] = (float)rows[r];
                used[terms++] = r * _padded;
            }
        }

        constant += Math.Max(0, slope) * _p.Source.FreeMaximum;
        constant += _rounding * magnitude;

        // Only amounts that can be other than 0 add anything.
        int live = 0;
        int* at = stackalloc int[n];
        float* lows = stackalloc float[n];
        float* highs = stackalloc float[n];
        float* mus = stackalloc float[n];
        for (int i = 0; i < n; i++)
        {
            mu[i] = (float)sums[i];
            if (high[i] > 0)
            {
                at[live] = i * _single.Stride;
                lows[live] = (float)low[i];
                highs[live] = (float)high[i];
                mus[live++] = mu[i];
            }
        }

        fixed (
            float* columns = _single.Columns,
                slack = _single.Slack,
                to = reach
        )
        {
            for (int s = 0; s < _padded; s += Lanes)
            {
                var sum = Vector512.Create((float)constant);
                for (int k = 0; k < terms; k++)
                {
                    sum += Vector512.Load(slack + used[k] + s) * weight[k];
                }

                for (int i = 0; i < live; i++)
                {
                    float* column = columns + at[i] + s;
                    var a = Vector512.Create(mus[i]);
                    for (int k = 0; k < terms; k++)
                    {
                        a = Vector512.FusedMultiplyAdd(
                            Vector512.Load(column + used[k]),
                            Vector512.Create(weight[k]),
                            a
                        );
                    }

                    sum += Vector512.MaxNative(a * lows[i], a * highs[i]);
                }

                sum.Store(to + s);
            }
        }
    }

    /// <summary>Hands a node's certificates and bounds down to a child.</summary>
    private static void Inherit(BoxNode node, BoxNode child)
    {
        child.Certificates = node.Certificates;
        for (int c = 0; c < node.Certificates; c++)
        {
            node.Rows[c].CopyTo(child.Rows[c], 0);
            node.Lambda[c].CopyTo(child.Lambda[c], 0);
            node.Mu[c].CopyTo(child.Mu[c], 0);
        }

        child.Narrowings = node.Narrowings;
        node.Least.CopyTo(child.Least, 0);
    }

    /// <summary>Bounds of a box that differs from another in the range of one variable; the two may be the same.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Narrow(BoxNode node, BoxNode child, int i, double newLow, double newHigh)
    {
        int padded = _padded;
        int count = node.Certificates;

        // A positive coefficient loses what the upper bound comes down, a negative one what the lower bound goes up.
        var fall = Vector512.Create((float)(newHigh - node.High[i]));
        var rise = Vector512.Create((float)(newLow - node.Low[i]));
        child.Low[i] = newLow;
        child.High[i] = newHigh;
        child.Narrowings = node.Narrowings + 1;
        if (child.Narrowings > MostNarrowings)
        {
            Anew(child);
            return;
        }

        int* used = stackalloc int[_p.R];
        float* weight = stackalloc float[_p.R];
        fixed (
            float* column = &_single.Columns[i * _single.Stride],
                least = child.Least
        )
        {
            for (int c = 0; c < count; c++)
            {
                int terms = Terms(node.Rows[c], used, weight);
                var mu = Vector512.Create(node.Mu[c][i]);
                fixed (
                    float* from = node.Reach[c],
                        to = child.Reach[c]
                )
                {
                    for (int s = 0; s < padded; s += Lanes)
                    {
                        Vector512<float> a = mu;
                        for (int k = 0; k < terms; k++)
                        {
                            a = Vector512.FusedMultiplyAdd(
                                Vector512.Load(column + used[k] + s),
                                Vector512.Create(weight[k]),
                                a
                            );
                        }

                        Vector512<float> reach =
                            Vector512.Load(from + s)
                            + (Vector512.MaxNative(a, Vector512<float>.Zero) * fall)
                            + (Vector512.MinNative(a, Vector512<float>.Zero) * rise);
                        reach.Store(to + s);
                        Vector512.MinNative(Vector512.Load(least + s), reach).Store(least + s);
                    }
                }
            }
        }

        child.Lost = CountLost(child.Least);
    }

    /// <summary>Bounds of a box from scratch.</summary>
    private void Anew(BoxNode node)
    {
        for (int c = 0; c < node.Certificates; c++)
        {
            Evaluate(
                node.Rows[c],
                node.Lambda[c],
                node.Forms,
                node.Low,
                node.High,
                node.Mu[c],
                node.Reach[c]
            );
            Lower(node.Least, node.Reach[c]);
        }

        node.Narrowings = 0;
        node.Lost = CountLost(node.Least);
    }

    private int Terms(double[] rows, int* used, float* weight)
    {
        int count = 0;
        for (int r = 0; r < rows.Length; r++)
        {
            if (rows[r] > 0)
            {
                weight[count] = (float)rows[r];
                used[count++] = r * _padded;
            }
        }

        return count;
    }

    private static void Lower(float[] least, float[] reach)
    {
        fixed (
            float* a = least,
                b = reach
        )
        {
            for (int s = 0; s < least.Length; s += Lanes)
            {
                Vector512.MinNative(Vector512.Load(a + s), Vector512.Load(b + s)).Store(a + s);
            }
        }
    }

    /// <summary>Scenarios whose bound is negative. Padding lanes are never negative while a scenario row takes part; when only forms do, the whole box is empty anyway.</summary>
    private static int CountLost(float[] least)
    {
        int lost = 0;
        fixed (float* a = least)
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
