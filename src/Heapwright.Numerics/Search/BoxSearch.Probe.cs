using System.Numerics;
using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Search;

/// <content>Finding certificates: small linear programs for chosen scenarios.</content>
internal sealed unsafe partial class BoxSearch
{
    /// <summary>Range of the margin variable of the linear program, in spreads.</summary>
    private const float MarginRange = 10;

    /// <summary>Programs in a row that lose no scenario after which a box is taken to survive: to halve it says more.</summary>
    private const int MostIdle = 2;

    private readonly QuickDualSimplex _program;
    private readonly double[] _sigma;
    private readonly float[] _inverseSigma;
    private readonly double[] _formScale;
    private readonly float[] _formRows;
    private readonly float[] _formRight;
    private readonly float[] _cost;
    private readonly float[] _low;
    private readonly float[] _high;
    private readonly float[] _slacks;

    /// <summary>How far each row spreads over the scenarios for an average load: the unit of margins.</summary>
    private static double[] Spreads(PreparedProblem p)
    {
        var sigma = new double[p.R];
        for (int r = 0; r < p.R; r++)
        {
            double size = 0;
            for (int i = 0; i < p.N; i++)
            {
                sigma[r] += Deviation(p, i, r) * p.Source.Upper[i] / p.N;
                size += Math.Abs(p.NominalColumns[(i * p.R) + r]) * p.Source.Upper[i] / p.N;
            }

            // Exact rows (no spread) are measured by a hundredth of their size.
            sigma[r] = Math.Max(sigma[r], (0.01 * size) + 1e-300);
        }

        return sigma;
    }

    private static double Deviation(PreparedProblem p, int i, int r)
    {
        ReadOnlySpan<double> a = p.Columns.AsSpan((i * p.Stride) + (r * p.Padded), p.S);
        double mean = 0;
        foreach (double v in a)
        {
            mean += v;
        }

        mean /= p.S;
        double square = 0;
        foreach (double v in a)
        {
            square += (v - mean) * (v - mean);
        }

        return Math.Sqrt(square / p.S);
    }

    /// <summary>
    /// Sorts scenarios into lost (by certificate) and safe (by witness) until the box is discarded (false) or is known to survive
    /// (true): enough scenarios are safe, all are sorted, or certificates lose no more.
    /// </summary>
    private bool Probe(BoxNode node)
    {
        Array.Clear(node.Safe);
        for (int k = 0; k < node.Witnesses; k++)
        {
            Or(node.Safe, node.WitnessHolds[k]);
        }

        bool ranked = false;
        int idle = 0;
        bool loaded = false;
        if (node.Witnesses > 0)
        {
            Slacks(node.Witness[node.Witnesses - 1], default);
            ranked = true;
        }

        while (true)
        {
            int target = Target(node, ranked, out int safe);
            if (target < 0 || safe >= _p.S - _mayFail)
            {
                return true;
            }

            if (!loaded)
            {
                LoadForms(node);
                loaded = true;
            }

            bool? solved = SolveFor(target);
            int lostBefore = node.Lost;
            if (
                solved is not null
                && (solved == false || -_program.X[_p.N + 1] < MarginRange - 0.01f)
            )
            {
                AddCertificate(node);
                if (node.Lost > _mayFail)
                {
                    return false;
                }
            }

            bool lost = node.Least[target] < 0;
            if (!lost)
            {
                // Solved with room, or so near the edge that rounding decides: keep the box.
                node.Safe[target >> 6] |= 1UL << (target & 63);
            }

            idle = node.Lost > lostBefore ? 0 : idle + 1;
            if (idle == MostIdle)
            {
                return true;
            }

            if (solved == true && (!lost || node.Lost == lostBefore))
            {
                AddWitness(node);
                ranked = true;
            }
        }
    }

    /// <summary>The unsorted scenario that looks worst: at the last witness, or by its bound when there is no witness.</summary>
    private int Target(BoxNode node, bool ranked, out int safe)
    {
        safe = 0;
        var best = Vector512.Create(float.PositiveInfinity);
        Vector512<int> where = Vector512.Create(-1);
        Vector512<int> index = Vector512<int>.Indices;
        var lane = Vector512.Create(
            1,
            2,
            4,
            8,
            16,
            32,
            64,
            128,
            256,
            512,
            1024,
            2048,
            4096,
            8192,
            16384,
            32768
        );
        var end = Vector512.Create(_p.S);
        fixed (
            float* keys = ranked ? _slacks : node.Least,
                least = node.Least
        )
        {
            for (int s = 0; s < _padded; s += Lanes)
            {
                int bits = (int)(node.Safe[s >> 6] >> (s & 63)) & 0xffff;
                Vector512<int> inside = Vector512.LessThan(index, end);
                Vector512<int> open =
                    inside
                    & Vector512
                        .GreaterThanOrEqual(Vector512.Load(least + s), Vector512<float>.Zero)
                        .AsInt32();
                Vector512<int> held = Vector512.Equals(Vector512.Create(bits) & lane, lane);
                safe += BitOperations.PopCount(
                    Vector512.ExtractMostSignificantBits((open & held).AsSingle())
                );
                Vector512<float> key = Vector512.Load(keys + s);
                Vector512<int> less =
                    Vector512.AndNot(open, held) & Vector512.LessThan(key, best).AsInt32();
                best = Vector512.ConditionalSelect(less.AsSingle(), key, best);
                where = Vector512.ConditionalSelect(less, index, where);
                index += Vector512.Create(Lanes);
            }
        }

        // Of equals the first, so that the order of lanes does not matter.
        int target = -1;
        float worst = float.PositiveInfinity;
        for (int k = 0; k < Lanes; k++)
        {
            int at = where.GetElement(k);
            float key = best.GetElement(k);
            if (at >= 0 && (key < worst || (key == worst && at < target)))
            {
                (worst, target) = (key, at);
            }
        }

        return target;
    }

    /// <summary>Writes the forms of a node, scaled, as rows for the small linear programs.</summary>
    private void LoadForms(BoxNode node)
    {
        int n = _p.N;
        int width = _forms.Width;
        int stride = _program.Stride;
        for (int q = 0; q < _forms.Count; q++)
        {
            ReadOnlySpan<double> form = node.Forms.AsSpan(q * width, width);
            Span<float> row = _formRows.AsSpan(q * stride, stride);
            double scale = _formScale[q];
            for (int i = 0; i <= n; i++)
            {
                row[i] = (float)(form[i] * scale);
            }

            _formRight[q] = (float)(-form[n + 1] * scale);
        }

        for (int i = 0; i < n; i++)
        {
            _low[i] = (float)node.Low[i];
            _high[i] = (float)node.High[i];
        }

        _low[n] = 0;
        _high[n] = (float)_p.Source.FreeMaximum;
        _low[n + 1] = -MarginRange;
        _high[n + 1] = MarginRange;
        _cost[n + 1] = 1;
    }

    /// <summary>Largest margin t such that forms ≥ 0 and rows of the scenario ≥ t·spread somewhere in the box; null: not solved, false: no such point or t below 0.</summary>
    private bool? SolveFor(int s)
    {
        int count = _forms.Count;
        int stride = _program.Stride;
        int length = _p.R * stride;
        float[] tableau = _program.Tableau;
        _formRows.CopyTo(tableau, 0);
        _single.ByScenario.AsSpan(s * length, length).CopyTo(tableau.AsSpan(count * stride));
        _formRight.CopyTo(_program.Right, 0);
        _single.RightByScenario.AsSpan(s * _p.R, _p.R).CopyTo(_program.Right.AsSpan(count));
        _program.Start(_cost, _low, _high);
        bool? solved = _program.Solve();
        return solved == true && _program.X[_p.N + 1] > 0 ? false : solved;
    }

    /// <summary>Turns the multipliers of the last program into a certificate of the node and lowers its bounds by it.</summary>
    private void AddCertificate(BoxNode node)
    {
        int slot = node.Certificates;
        if (slot == BoxNode.MostCertificates)
        {
            // The oldest gives way; its bounds stay in Least.
            Rotate(node.Reach);
            Rotate(node.Rows);
            Rotate(node.Lambda);
            Rotate(node.Mu);
            slot--;
        }
        else
        {
            node.Certificates++;
        }

        double[] rows = node.Rows[slot];
        double[] lambda = node.Lambda[slot];
        double size = 0;
        for (int r = 0; r < _p.R; r++)
        {
            size += _program.Y[_forms.Count + r] * _sigma[r];
        }

        if (size <= 1e-9)
        {
            for (int q = 0; q < _forms.Count; q++)
            {
                size = Math.Max(size, _program.Y[q] * (double)SingleRows.Size);
            }
        }

        double scale = size > 0 ? 1 / size : 0;
        for (int q = 0; q < _forms.Count; q++)
        {
            lambda[q] = _program.Y[q] * scale * _formScale[q];
        }

        for (int r = 0; r < _p.R; r++)
        {
            rows[r] = _program.Y[_forms.Count + r] * scale;
        }

        Evaluate(rows, lambda, node.Forms, node.Low, node.High, node.Mu[slot], node.Reach[slot]);
        Lower(node.Least, node.Reach[slot]);
        node.Lost = CountLost(node.Least);
    }

    private static void Rotate<T>(T[][] list)
    {
        T[] first = list[0];
        Array.Copy(list, 1, list, 0, list.Length - 1);
        list[^1] = first;
    }
}
