using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Search;

/// <content>Which side of a box to cut: the cut whose halves lose most scenarios, by the latest certificates.</content>
internal sealed unsafe partial class BoxSearch
{
    private const int ScoreCertificates = 3;

    /// <summary>What the last pass of <see cref="Shave"/> found for the halves of every variable, [variable].</summary>
    private readonly Halves[] _halves;

    private readonly double[] _impact;
    private readonly float[] _scratch;
    private readonly float[] _trial;
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
    private (int Dimension, bool HighFirst) ChooseSplit(BoxNode node, float near)
    {
        int first = Math.Max(0, node.Certificates - ScoreCertificates);
        float now = Soft(node.Least, near);
        int best = -1;
        double bestScore = double.NegativeInfinity;
        bool highFirst = false;
        for (int d = 0; d < _p.N + 2; d++)
        {
            Halves halves;
            double bonus;
            if (d < _p.N)
            {
                if (node.High[d] <= node.Low[d])
                {
                    continue;
                }

                halves = _halves[d];
                bonus = 0.001 * _impact[d] * (node.High[d] - node.Low[d]);
            }
            else
            {
                (double from, double to) = d == _p.N ? node.SliceA : node.SliceB;
                (int p, int q) = d == _p.N ? _forms.PairA : _forms.PairB;
                if (p < 0 || to - from < ThinnestSlice)
                {
                    continue;
                }

                // The lower half changes the second form of the pair, the upper half the first.
                double cut = 0.5 * (from + to);
                (float low, int lostLow) = ScoreHalf(node, d, first, near, (from, cut), q);
                (float high, int lostHigh) = ScoreHalf(node, d, first, near, (cut, to), p);
                halves = new Halves(low, high, lostLow, lostHigh);
                bonus = 0;
            }

            double a = halves.Low - now;
            double b = halves.High - now;
            double score = ((a + 0.01) * (b + 0.01)) + (0.02 * (a + b)) + bonus;
            if (halves.LostLow > _mayFail || halves.LostHigh > _mayFail)
            {
                score += 1000 + a + b;
            }

            if (score > bestScore)
            {
                (best, bestScore, highFirst) = (d, score, halves.High < halves.Low);
            }
        }

        return (best, highFirst);
    }

    /// <summary>Cuts off halves of a box in which too many scenarios are lost, as long as there are any; false if nothing is left. Leaves the scores of what remains.</summary>
    private bool Shave(BoxNode node, out float near)
    {
        bool changed = true;
        near = 1;
        while (changed)
        {
            changed = false;
            near = Near(node);
            int first = Math.Max(0, node.Certificates - ScoreCertificates);
            for (int i = 0; i < _p.N; i++)
            {
                while (node.High[i] > node.Low[i])
                {
                    _halves[i] = ScoreVariable(node, i, first, near);
                    (int low, int high) = (_halves[i].LostLow, _halves[i].LostHigh);
                    if (low > _mayFail && high > _mayFail)
                    {
                        return false;
                    }

                    if (low <= _mayFail && high <= _mayFail)
                    {
                        break;
                    }

                    double middle = Middle(node, i);
                    changed = true;
                    Shrink(
                        node,
                        i,
                        low > _mayFail ? middle + 1 : node.Low[i],
                        low > _mayFail ? node.High[i] : middle
                    );
                }
            }

            if (changed && !Tighten(node))
            {
                return false;
            }
        }

        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private Halves ScoreVariable(BoxNode node, int i, int first, float near)
    {
        double middle = Middle(node, i);
        var fall = Vector512.Create((float)(middle - node.High[i]));
        var rise = Vector512.Create((float)(middle + 1 - node.Low[i]));
        var scale = Vector512.Create(1 / near);
        Vector512<float> sumLow = default;
        Vector512<float> sumHigh = default;
        int lostLow = 0;
        int lostHigh = 0;
        int certificates = node.Certificates - first;
        int* used = stackalloc int[_p.R * ScoreCertificates];
        float* weight = stackalloc float[_p.R * ScoreCertificates];
        int* terms = stackalloc int[ScoreCertificates];
        float* mu = stackalloc float[ScoreCertificates];
        for (int c = 0; c < certificates; c++)
        {
            terms[c] = Terms(node.Rows[first + c], used + (c * _p.R), weight + (c * _p.R));
            mu[c] = node.Mu[first + c][i];
        }

        fixed (
            float* column = &_single.Columns[i * _single.Stride],
                least = node.Least,
                r0 = node.Reach[first],
                r1 = node.Reach[Math.Min(first + 1, BoxNode.MostCertificates - 1)],
                r2 = node.Reach[Math.Min(first + 2, BoxNode.MostCertificates - 1)]
        )
        {
            float** reach = stackalloc float*[ScoreCertificates] { r0, r1, r2 };
            for (int s = 0; s < _padded; s += Lanes)
            {
                Vector512<float> lowLeast = Vector512.Load(least + s);
                Vector512<float> highLeast = lowLeast;
                for (int c = 0; c < certificates; c++)
                {
                    var a = Vector512.Create(mu[c]);
                    int* u = used + (c * _p.R);
                    float* v = weight + (c * _p.R);
                    for (int k = 0; k < terms[c]; k++)
                    {
                        a = Vector512.FusedMultiplyAdd(
                            Vector512.Load(column + u[k] + s),
                            Vector512.Create(v[k]),
                            a
                        );
                    }

                    Vector512<float> now = Vector512.Load(reach[c] + s);
                    lowLeast = Vector512.MinNative(
                        lowLeast,
                        Vector512.FusedMultiplyAdd(
                            Vector512.MaxNative(a, Vector512<float>.Zero),
                            fall,
                            now
                        )
                    );
                    highLeast = Vector512.MinNative(
                        highLeast,
                        Vector512.FusedMultiplyAdd(
                            Vector512.MinNative(a, Vector512<float>.Zero),
                            rise,
                            now
                        )
                    );
                }

                lostLow += BitOperations.PopCount(Vector512.ExtractMostSignificantBits(lowLeast));
                lostHigh += BitOperations.PopCount(Vector512.ExtractMostSignificantBits(highLeast));
                sumLow += Softened(lowLeast, scale);
                sumHigh += Softened(highLeast, scale);
            }
        }

        return new Halves(Vector512.Sum(sumLow), Vector512.Sum(sumHigh), lostLow, lostHigh);
    }

    private (float Soft, int Lost) ScoreHalf(
        BoxNode node,
        int dimension,
        int first,
        float near,
        (double, double) half,
        int changed
    )
    {
        bool copied = false;
        for (int c = first; c < node.Certificates; c++)
        {
            // A certificate that does not use the changed form says nothing new.
            if (node.Lambda[c][changed] > 0)
            {
                if (!copied)
                {
                    SlicedForms(node.Forms, half, half, dimension, _trialForms);
                    node.Least.CopyTo(_scratch, 0);
                    copied = true;
                }

                Evaluate(
                    node.Rows[c],
                    node.Lambda[c],
                    _trialForms,
                    node.Low,
                    node.High,
                    _mu,
                    _trial
                );
                Lower(_scratch, _trial);
            }
        }

        return copied
            ? (Soft(_scratch, near), CountLost(_scratch))
            : (Soft(node.Least, near), node.Lost);
    }

    /// <summary>A bound that about one and a half times as many scenarios as may fail lie below: the range in which losses are near.</summary>
    private float Near(BoxNode node)
    {
        Span<float> copy = _scratch.AsSpan(0, _p.S);
        node.Least.AsSpan(0, _p.S).CopyTo(copy);
        int rank = Math.Min(_p.S - 1, _mayFail + (_mayFail / 2));
        float value = Selection.Smallest(copy, rank);
        return value < 1e30f ? Math.Max(1e-6f, value) : 1;
    }

    private static float Soft(float[] least, float near)
    {
        var scale = Vector512.Create(1 / near);
        Vector512<float> sum = default;
        fixed (float* a = least)
        {
            for (int s = 0; s < least.Length; s += Lanes)
            {
                sum += Softened(Vector512.Load(a + s), scale);
            }
        }

        return Vector512.Sum(sum);
    }

    /// <summary>1 for a lost scenario, 0 for one beyond the near range, in between linear.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<float> Softened(Vector512<float> least, Vector512<float> scale)
    {
        Vector512<float> v = Vector512<float>.One - (least * scale);
        return Vector512.MinNative(
            Vector512<float>.One,
            Vector512.MaxNative(Vector512<float>.Zero, v)
        );
    }

    /// <summary>The halves of a box: scenarios near to being lost, softly counted, and those lost.</summary>
    private readonly record struct Halves(float Low, float High, int LostLow, int LostHigh);
}
