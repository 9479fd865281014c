using System.Numerics;
using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Search;

/// <content>Finding certificates: small linear programs for chosen scenarios.</content>
internal sealed unsafe partial class BoxSearch
{
    /// <summary>Range of the margin variable of the linear program, in spreads.</summary>
    private const double MarginRange = 50;

    private const double UsefulMargin = 10;

    private readonly BoundedDualSimplex _program;
    private readonly double[] _sigma;
    private readonly double[] _cost;
    private readonly double[] _right;
    private readonly double[] _low;
    private readonly double[] _high;
    private readonly double[] _slacks;

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
    /// (true): enough scenarios are safe, or all are sorted.
    /// </summary>
    private bool Probe(BoxNode node)
    {
        Array.Clear(node.Safe);
        for (int k = 0; k < node.Witnesses; k++)
        {
            Or(node.Safe, node.WitnessHolds[k]);
        }

        bool ranked = false;
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

            bool? solved = SolveFor(node, target);
            int lostBefore = node.Lost;
            if (solved is not null && (solved == false || -_program.X[_p.N + 1] < UsefulMargin))
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
        int target = -1;
        double worst = double.PositiveInfinity;
        double[] key = ranked ? _slacks : node.Least;
        for (int word = 0; word < node.Safe.Length; word++)
        {
            ulong bits = node.Safe[word];
            int first = word * 64;
            int end = Math.Min(_p.S, first + 64);
            for (int s = first; s < end; s++)
            {
                if (node.Least[s] < 0)
                {
                    continue;
                }

                if ((bits >> (s & 63) & 1) != 0)
                {
                    safe++;
                }
                else if (key[s] < worst)
                {
                    (worst, target) = (key[s], s);
                }
            }
        }

        return target;
    }

    /// <summary>Largest margin t such that forms ≥ 0 and rows of the scenario ≥ t·spread somewhere in the box; null: not solved, false: no such point or t below 0.</summary>
    private bool? SolveFor(BoxNode node, int s)
    {
        int n = _p.N;
        int count = _forms.Count;
        int width = _forms.Width;
        int stride = _program.Stride;
        Span<double> tableau = _program.Tableau;
        for (int q = 0; q < count; q++)
        {
            ReadOnlySpan<double> form = node.Forms.AsSpan(q * width, width);
            Span<double> row = tableau.Slice(q * stride, stride);
            form[..(n + 1)].CopyTo(row);
            row[n + 1] = 0;
            _right[q] = -form[n + 1];
        }

        for (int r = 0; r < _p.R; r++)
        {
            Span<double> row = tableau.Slice((count + r) * stride, stride);
            int at = (r * _p.Padded) + s;
            for (int i = 0; i < n; i++, at += _p.Stride)
            {
                row[i] = _p.Columns[at];
            }

            row[n] = _p.Slope(r);
            row[n + 1] = _sigma[r];
            _right[count + r] = -_p.Slack[(r * _p.Padded) + s];
        }

        node.Low.CopyTo(_low, 0);
        node.High.CopyTo(_high, 0);
        _low[n] = 0;
        _high[n] = _p.Source.FreeMaximum;
        _low[n + 1] = -MarginRange;
        _high[n + 1] = MarginRange;
        _cost[n + 1] = 1;
        _program.Start(_cost, _right, _low, _high);
        bool? solved = _program.Solve();
        return solved == true && _program.X[n + 1] > 0 ? false : solved;
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
                size = Math.Max(size, _program.Y[q] * _magnitude[q]);
            }
        }

        double scale = size > 0 ? 1 / size : 0;
        for (int q = 0; q < _forms.Count; q++)
        {
            lambda[q] = _program.Y[q] * scale;
        }

        for (int r = 0; r < _p.R; r++)
        {
            rows[r] = _program.Y[_forms.Count + r] * scale;
        }

        Evaluate(rows, lambda, node.Forms, node.Low, node.High, node.Mu[slot], node.Reach[slot]);
        Lower(node.Least, node.Reach[slot]);
        node.Lost = CountLost(node.Least);
    }

    private static void Rotate(double[][] list)
    {
        double[] first = list[0];
        Array.Copy(list, 1, list, 0, list.Length - 1);
        list[^1] = first;
    }

    private void AddWitness(BoxNode node)
    {
        int slot = node.Witnesses;
        if (slot == BoxNode.MostWitnesses)
        {
            Rotate(node.Witness);
            (ulong[] first, int last) = (node.WitnessHolds[0], BoxNode.MostWitnesses - 1);
            Array.Copy(node.WitnessHolds, 1, node.WitnessHolds, 0, last);
            node.WitnessHolds[last] = first;
            slot--;
        }
        else
        {
            node.Witnesses++;
        }

        _program.X.AsSpan(0, _p.N + 1).CopyTo(node.Witness[slot]);
        Slacks(node.Witness[slot], node.WitnessHolds[slot]);
        Or(node.Safe, node.WitnessHolds[slot]);
    }

    /// <summary>Smallest row of every scenario at a point, in spreads; and the bits of those that hold.</summary>
    private void Slacks(double[] point, Span<ulong> holds)
    {
        int n = _p.N;
        double w = point[n];
        int padded = _p.Padded;
        holds.Clear();
        fixed (
            double* columns = _p.Columns,
                slack = _p.Slack,
                to = _slacks
        )
        {
            for (int s = 0; s < padded; s += Lanes)
            {
                var least = Vector512.Create(double.MaxValue);
                for (int r = 0; r < _p.R; r++)
                {
                    int at = (r * padded) + s;
                    Vector512<double> sum =
                        Vector512.Load(slack + at) + Vector512.Create(_p.Slope(r) * w);
                    double* column = columns + at;
                    for (int i = 0; i < n; i++, column += _p.Stride)
                    {
                        if (point[i] != 0)
                        {
                            sum += Vector512.Load(column) * point[i];
                        }
                    }

                    least = Vector512.Min(least, sum * (1 / _sigma[r]));
                }

                least.Store(to + s);
                if (holds.Length > 0)
                {
                    ulong bits = ~Vector512.ExtractMostSignificantBits(least) & 0xff;
                    holds[s >> 6] |= bits << (s & 63);
                }
            }
        }
    }

    private void KeepWitnesses(BoxNode node, BoxNode child)
    {
        int kept = 0;
        for (int k = 0; k < node.Witnesses; k++)
        {
            if (Inside(child, node.Witness[k]))
            {
                node.Witness[k].CopyTo(child.Witness[kept], 0);
                node.WitnessHolds[k].CopyTo(child.WitnessHolds[kept], 0);
                kept++;
            }
        }

        child.Witnesses = kept;
    }

    private bool Inside(BoxNode node, double[] point)
    {
        const double Edge = 1e-9;
        for (int i = 0; i < _p.N; i++)
        {
            if (point[i] < node.Low[i] - Edge || point[i] > node.High[i] + Edge)
            {
                return false;
            }
        }

        for (int q = 0; q < _forms.Count; q++)
        {
            ReadOnlySpan<double> form = node.Forms.AsSpan(q * _forms.Width, _forms.Width);
            double sum = form[_p.N + 1];
            for (int i = 0; i <= _p.N; i++)
            {
                sum += form[i] * point[i];
            }

            if (sum < -Edge * _magnitude[q])
            {
                return false;
            }
        }

        return true;
    }

    private static void Or(ulong[] into, ulong[] bits)
    {
        for (int k = 0; k < into.Length; k++)
        {
            into[k] |= bits[k];
        }
    }
}
