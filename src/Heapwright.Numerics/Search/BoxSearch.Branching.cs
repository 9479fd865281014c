using System.Numerics;
using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Search;

/// <content>Which side of a box to cut: the cut whose halves lose most scenarios, by the latest certificates.</content>
internal sealed unsafe partial class BoxSearch
{
    private const int ScoreCertificates = 3;

    private readonly double[] _impact;
    private readonly double[] _scratch;
    private readonly double[][] _trial;
    private readonly double[][] _trialB;
    private readonly double[] _trialForms;

    private static double[] Impacts(PreparedProblem p)
    {
        var impact = new double[p.N];
        for (int r = 0; r < p.R; r++)
        {
            double scale = 1e-300;
            for (int i = 0; i < p.N; i++)
            {
                scale += Math.Abs(p.NominalColumns[(i * p.R) + r]);
            }

            for (int i = 0; i < p.N; i++)
            {
                impact[i] +=
                    (Deviation(p, i, r) + (0.01 * Math.Abs(p.NominalColumns[(i * p.R) + r])))
                    / scale;
            }
        }

        return impact;
    }

    /// <summary>The dimension to halve (a variable, or N and N + 1 for the slices; −1 if none is left) and whether the upper half looks better.</summary>
    private (int Dimension, bool HighFirst) ChooseSplit(BoxNode node)
    {
        int first = Math.Max(0, node.Certificates - ScoreCertificates);
        double near = Near(node);
        double now = Soft(node.Least, near);
        int best = -1;
        double bestScore = double.NegativeInfinity;
        bool highFirst = false;
        for (int d = 0; d < _p.N + 2; d++)
        {
            double low;
            double high;
            int lostLow;
            int lostHigh;
            double bonus;
            if (d < _p.N)
            {
                if (node.High[d] <= node.Low[d])
                {
                    continue;
                }

                ScoreVariable(node, d, first, near, out low, out high, out lostLow, out lostHigh);
                bonus = 0.001 * _impact[d] * (node.High[d] - node.Low[d]);
            }
            else
            {
                (double from, double to) = d == _p.N ? node.SliceA : node.SliceB;
                if (
                    (d == _p.N ? _forms.PairA : _forms.PairB).First < 0
                    || to - from < ThinnestSlice
                )
                {
                    continue;
                }

                ScoreSlice(node, d, first, near, out low, out high, out lostLow, out lostHigh);
                bonus = 0;
            }

            double a = low - now;
            double b = high - now;
            double score = ((a + 0.01) * (b + 0.01)) + (0.02 * (a + b)) + bonus;
            if (lostLow > _mayFail || lostHigh > _mayFail)
            {
                score += 1000 + a + b;
            }

            if (score > bestScore)
            {
                (best, bestScore, highFirst) = (d, score, high < low);
            }
        }

        return (best, highFirst);
    }

    private void ScoreVariable(
        BoxNode node,
        int i,
        int first,
        double near,
        out double softLow,
        out double softHigh,
        out int lostLow,
        out int lostHigh
    )
    {
        double middle = Middle(node, i);
        var low = Vector512.Create(node.Low[i]);
        var high = Vector512.Create(node.High[i]);
        var below = Vector512.Create(middle);
        var above = Vector512.Create(middle + 1);
        var scale = Vector512.Create(1 / near);
        Vector512<double> sumLow = default;
        Vector512<double> sumHigh = default;
        lostLow = 0;
        lostHigh = 0;
        int certificates = node.Certificates - first;
        int* used = stackalloc int[_p.R * ScoreCertificates];
        double* weight = stackalloc double[_p.R * ScoreCertificates];
        int* terms = stackalloc int[ScoreCertificates];
        double* mu = stackalloc double[ScoreCertificates];
        double** reach = stackalloc double*[ScoreCertificates];
        for (int c = 0; c < certificates; c++)
        {
            terms[c] = Terms(node.Rows[first + c], used + (c * _p.R), weight + (c * _p.R));
            mu[c] = node.Mu[first + c][i];
        }

        // Pinned one by one below: the arrays of a node never move while its split is chosen.
        fixed (
            double* column = &_p.Columns[i * _p.Stride],
                least = node.Least
        )
        fixed (
            double* r0 = node.Reach[0],
                r1 = node.Reach[1],
                r2 = node.Reach[2],
                r3 = node.Reach[3],
                r4 = node.Reach[4],
                r5 = node.Reach[5]
        )
        {
            double** all = stackalloc double*[BoxNode.MostCertificates] { r0, r1, r2, r3, r4, r5 };
            for (int c = 0; c < certificates; c++)
            {
                reach[c] = all[first + c];
            }

            for (int s = 0; s < _p.Padded; s += Lanes)
            {
                Vector512<double> lowLeast = Vector512.Load(least + s);
                Vector512<double> highLeast = lowLeast;
                for (int c = 0; c < certificates; c++)
                {
                    var a = Vector512.Create(mu[c]);
                    int* u = used + (c * _p.R);
                    double* v = weight + (c * _p.R);
                    for (int k = 0; k < terms[c]; k++)
                    {
                        a += Vector512.Load(column + u[k] + s) * v[k];
                    }

                    Vector512<double> atLow = a * low;
                    Vector512<double> atHigh = a * high;
                    Vector512<double> rest =
                        Vector512.Load(reach[c] + s) - Vector512.Max(atLow, atHigh);
                    lowLeast = Vector512.Min(lowLeast, rest + Vector512.Max(atLow, a * below));
                    highLeast = Vector512.Min(highLeast, rest + Vector512.Max(a * above, atHigh));
                }

                lostLow += BitOperations.PopCount(Vector512.ExtractMostSignificantBits(lowLeast));
                lostHigh += BitOperations.PopCount(Vector512.ExtractMostSignificantBits(highLeast));
                sumLow += Softened(lowLeast, scale);
                sumHigh += Softened(highLeast, scale);
            }
        }

        softLow = Vector512.Sum(sumLow);
        softHigh = Vector512.Sum(sumHigh);
    }

    private void ScoreSlice(
        BoxNode node,
        int dimension,
        int first,
        double near,
        out double softLow,
        out double softHigh,
        out int lostLow,
        out int lostHigh
    )
    {
        (double from, double to) = dimension == _p.N ? node.SliceA : node.SliceB;
        double middle = 0.5 * (from + to);
        (softLow, lostLow) = ScoreHalf(node, dimension, first, near, (from, middle));
        (softHigh, lostHigh) = ScoreHalf(node, dimension, first, near, (middle, to));
    }

    private (double Soft, int Lost) ScoreHalf(
        BoxNode node,
        int dimension,
        int first,
        double near,
        (double, double) half
    )
    {
        SlicedForms(node.Forms, half, half, dimension, _trialForms);
        (int p, int q) = dimension == _p.N ? _forms.PairA : _forms.PairB;
        node.Least.CopyTo(_scratch, 0);
        for (int c = first; c < node.Certificates; c++)
        {
            // A certificate that does not use the changed forms says nothing new.
            if (node.Lambda[c][p] > 0 || node.Lambda[c][q] > 0)
            {
                Evaluate(
                    node.Rows[c],
                    node.Lambda[c],
                    _trialForms,
                    node.Low,
                    node.High,
                    _mu,
                    _trial[0]
                );
                Lower(_scratch, _trial[0]);
            }
        }

        return (Soft(_scratch, near), CountLost(_scratch));
    }

    /// <summary>A bound that about one and a half times as many scenarios as may fail lie below: the range in which losses are near.</summary>
    private double Near(BoxNode node)
    {
        Span<double> copy = _scratch.AsSpan(0, _p.S);
        node.Least.AsSpan(0, _p.S).CopyTo(copy);
        int rank = Math.Min(_p.S - 1, _mayFail + (_mayFail / 2));
        double value = Selection.Smallest(copy, rank);
        return value < 1e300 ? Math.Max(1e-6, value) : 1;
    }

    private double Soft(double[] least, double near)
    {
        var scale = Vector512.Create(1 / near);
        Vector512<double> sum = default;
        fixed (double* a = least)
        {
            for (int s = 0; s < _p.Padded; s += Lanes)
            {
                sum += Softened(Vector512.Load(a + s), scale);
            }
        }

        return Vector512.Sum(sum);
    }

    /// <summary>1 for a lost scenario, 0 for one beyond the near range, in between linear.</summary>
    private static Vector512<double> Softened(Vector512<double> least, Vector512<double> scale)
    {
        Vector512<double> v = Vector512<double>.One - (least * scale);
        return Vector512.Min(Vector512<double>.One, Vector512.Max(Vector512<double>.Zero, v));
    }
}
