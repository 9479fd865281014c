using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Search;

/// <content>Witnesses: points of a box at which some scenarios are seen to hold.</content>
internal sealed unsafe partial class BoxSearch
{
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
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Slacks(float[] point, Span<ulong> holds)
    {
        int n = _p.N;
        holds.Clear();
        int live = 0;
        int* used = stackalloc int[n];
        float* value = stackalloc float[n];
        for (int i = 0; i < n; i++)
        {
            if (point[i] != 0)
            {
                used[live] = i * _single.Stride;
                value[live++] = point[i];
            }
        }

        fixed (
            float* columns = _single.Columns,
                slack = _single.Slack,
                to = _slacks
        )
        {
            for (int s = 0; s < _padded; s += Lanes)
            {
                var least = Vector512.Create(float.MaxValue);
                for (int r = 0; r < _p.R; r++)
                {
                    int at = (r * _padded) + s;
                    Vector512<float> sum =
                        Vector512.Load(slack + at)
                        + Vector512.Create((float)_single.Slope[r] * point[n]);
                    for (int i = 0; i < live; i++)
                    {
                        sum = Vector512.FusedMultiplyAdd(
                            Vector512.Load(columns + used[i] + at),
                            Vector512.Create(value[i]),
                            sum
                        );
                    }

                    least = Vector512.MinNative(least, sum * _inverseSigma[r]);
                }

                least.Store(to + s);
                if (holds.Length > 0)
                {
                    ulong bits = ~Vector512.ExtractMostSignificantBits(least) & 0xffff;
                    holds[s >> 6] |= bits << (s & 63);
                }
            }
        }
    }

    private void KeepWitnesses(BoxNode node, BoxNode child, int dimension)
    {
        int kept = 0;
        for (int k = 0; k < node.Witnesses; k++)
        {
            if (Inside(child, node.Witness[k], dimension))
            {
                node.Witness[k].CopyTo(child.Witness[kept], 0);
                node.WitnessHolds[k].CopyTo(child.WitnessHolds[kept], 0);
                kept++;
            }
        }

        child.Witnesses = kept;
    }

    /// <summary>True if a point of the box above lies in this half too; only what the cut changed is looked at.</summary>
    private bool Inside(BoxNode node, float[] point, int dimension)
    {
        const double Edge = 1e-5;
        if (dimension < _p.N)
        {
            return point[dimension] >= node.Low[dimension] - Edge
                && point[dimension] <= node.High[dimension] + Edge;
        }

        (int first, int second) = dimension == _p.N ? _forms.PairA : _forms.PairB;
        return Holds(node, point, first) && Holds(node, point, second);
    }

    private bool Holds(BoxNode node, float[] point, int q)
    {
        ReadOnlySpan<double> form = node.Forms.AsSpan(q * _forms.Width, _forms.Width);
        double sum = form[_p.N + 1];
        for (int i = 0; i <= _p.N; i++)
        {
            sum += form[i] * point[i];
        }

        return sum >= -1e-5 * _magnitude[q];
    }

    private static void Or(ulong[] into, ulong[] bits)
    {
        for (int k = 0; k < into.Length; k++)
        {
            into[k] |= bits[k];
        }
    }

    private static void DropWitness(BoxNode node, int k)
    {
        int last = --node.Witnesses;
        (float[] point, ulong[] holds) = (node.Witness[k], node.WitnessHolds[k]);
        Array.Copy(node.Witness, k + 1, node.Witness, k, last - k);
        Array.Copy(node.WitnessHolds, k + 1, node.WitnessHolds, k, last - k);
        node.Witness[last] = point;
        node.WitnessHolds[last] = holds;
    }
}
