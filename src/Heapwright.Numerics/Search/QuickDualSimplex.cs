using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Search;

/// <summary>
/// <see cref="BoundedDualSimplex"/> in single precision, a row of the tableau in a vector or two: minimise c·x subject to rows
/// a_k·x ≥ b_k and finite bounds. Its multipliers are guesses from which certificates are made and then checked over the whole
/// box with allowance for rounding, so that its own rounding can cost strength but never correctness.
/// Scratch memory is reused; not for use by two threads.
/// </summary>
internal sealed unsafe class QuickDualSimplex
{
    private const int Lanes = 16;
    private const float PivotTolerance = 1e-5f;
    private readonly int _n;
    private readonly int _stride;
    private readonly int _rows;
    private readonly float[] _t;
    private readonly float[] _beta;
    private readonly float[] _rowLow;
    private readonly float[] _rowHigh;
    private readonly float[] _at;
    private readonly float[] _side;
    private readonly float[] _low;
    private readonly float[] _high;
    private readonly int[] _basic;
    private readonly int[] _nonbasic;
    private readonly int _m;

    internal QuickDualSimplex(int variables, int rows)
    {
        _n = variables;
        _m = rows;
        _stride = (variables + Lanes - 1) / Lanes * Lanes;
        _rows = (rows + Lanes - 1) / Lanes * Lanes;

        // The last row holds the reduced costs, so that a pivot treats them like any other row.
        _t = new float[(rows + 1) * _stride];
        _beta = new float[_rows + Lanes];
        _rowLow = new float[_rows];
        _rowHigh = new float[_rows];
        _at = new float[_stride];
        _side = new float[_stride];
        _low = new float[variables + rows];
        _high = new float[variables + rows];
        _basic = new int[rows];
        _nonbasic = new int[variables];
        Right = new float[rows];
        X = new float[variables];
        Y = new float[rows];
    }

    /// <summary>Floats from one row to the next in <see cref="Tableau"/>.</summary>
    internal int Stride => _stride;

    /// <summary>Row coefficients to be filled before <see cref="Start"/>, [row, variable] at <see cref="Stride"/>, padding 0; overwritten by the solve.</summary>
    internal float[] Tableau => _t;

    /// <summary>Right-hand sides to be filled before <see cref="Start"/>, [row].</summary>
    internal float[] Right { get; }

    /// <summary>Solution after a feasible solve, [variable].</summary>
    internal float[] X { get; }

    /// <summary>Multipliers, [row], ≥ 0; after an infeasible solve those of a certificate.</summary>
    internal float[] Y { get; }

    /// <summary>A bound may be missed by this much, absolute.</summary>
    internal float Feasibility { get; init; } = 1e-4f;

    /// <summary>Starts from the rows and right-hand sides already written; costs ≥ 0, so that every variable begins at its lower bound.</summary>
    internal void Start(ReadOnlySpan<float> cost, ReadOnlySpan<float> low, ReadOnlySpan<float> high)
    {
        Span<float> d = _t.AsSpan(_m * _stride, _stride);
        d.Clear();
        cost[.._n].CopyTo(d);
        low[.._n].CopyTo(_low);
        high[.._n].CopyTo(_high);
        for (int j = 0; j < _n; j++)
        {
            _nonbasic[j] = j;

            // Where there is no cost either bound will do: the one nearer to the solution before saves pivots.
            bool up = cost[j] == 0 && 2 * X[j] > low[j] + high[j];
            _at[j] = up ? high[j] : low[j];
            _side[j] =
                low[j] == high[j] ? 0
                : up ? -1
                : 1;
        }

        Array.Fill(_rowHigh, float.PositiveInfinity);
        Array.Fill(_rowLow, float.NegativeInfinity, _m, _rows - _m);
        Array.Clear(_rowLow, 0, _m);
        fixed (
            float* t = _t,
                at = _at
        )
        {
            for (int k = 0; k < _m; k++)
            {
                _basic[k] = _n + k;
                _low[_n + k] = 0;
                _high[_n + k] = float.PositiveInfinity;
                float* row = t + (k * _stride);
                Vector512<float> sum = default;
                for (int j = 0; j < _stride; j += Lanes)
                {
                    sum += Vector512.Load(row + j) * Vector512.Load(at + j);
                }

                _beta[k] = Vector512.Sum(sum) - Right[k];
            }
        }
    }

    /// <summary>Runs to the optimum. True: feasible; false: infeasible; null: stopped at the pivot limit.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal bool? Solve(int mostPivots = 400)
    {
        fixed (
            float* t = _t,
                beta = _beta,
                rowLow = _rowLow,
                rowHigh = _rowHigh,
                side = _side
        )
        {
            for (int pivots = 0; ; pivots++)
            {
                int row = Leaving(beta, rowLow, rowHigh);
                if (row < 0)
                {
                    Finish();
                    return true;
                }

                bool below = rowLow[row] - beta[row] > beta[row] - rowHigh[row];
                int column = Entering(t + (row * _stride), t + (_m * _stride), side, below);
                if (column < 0)
                {
                    Certificate(row, below);
                    return false;
                }

                if (pivots >= mostPivots)
                {
                    Finish();
                    return null;
                }

                Pivot(t, beta, row, column, below);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int Leaving(float* beta, float* rowLow, float* rowHigh)
    {
        var most = Vector512.Create(Feasibility);
        Vector512<int> where = Vector512.Create(-1);
        Vector512<int> index = Vector512<int>.Indices;
        for (int k = 0; k < _rows; k += Lanes)
        {
            Vector512<float> b = Vector512.Load(beta + k);
            Vector512<float> miss = Vector512.MaxNative(
                Vector512.Load(rowLow + k) - b,
                b - Vector512.Load(rowHigh + k)
            );
            Vector512<float> more = Vector512.GreaterThan(miss, most);
            most = Vector512.ConditionalSelect(more, miss, most);
            where = Vector512.ConditionalSelect(more.AsInt32(), index, where);
            index += Vector512.Create(Lanes);
        }

        float worst = Most(most);
        if (worst <= Feasibility)
        {
            return -1;
        }

        ulong at = Vector512.Equals(most, Vector512.Create(worst)).ExtractMostSignificantBits();
        return where.GetElement(BitOperations.TrailingZeroCount(at));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int Entering(float* alpha, float* d, float* side, bool below)
    {
        // Moving x_j off its bound must bring the leaving variable back to its own.
        var sign = Vector512.Create(below ? 1f : -1f);
        var tolerance = Vector512.Create(PivotTolerance);
        var none = Vector512.Create(float.PositiveInfinity);
        Vector512<float> least = none;
        Vector512<int> where = Vector512.Create(-1);
        Vector512<int> index = Vector512<int>.Indices;
        for (int j = 0; j < _stride; j += Lanes)
        {
            Vector512<float> a = sign * Vector512.Load(side + j) * Vector512.Load(alpha + j);
            Vector512<float> ratio = Vector512.ConditionalSelect(
                Vector512.GreaterThan(a, tolerance),
                Vector512.Abs(Vector512.Load(d + j)) / a,
                none
            );
            Vector512<float> less = Vector512.LessThan(ratio, least);
            least = Vector512.ConditionalSelect(less, ratio, least);
            where = Vector512.ConditionalSelect(less.AsInt32(), index, where);
            index += Vector512.Create(Lanes);
        }

        float ratioLeast = -Most(-least);
        if (float.IsPositiveInfinity(ratioLeast))
        {
            return -1;
        }

        // Among equals the largest pivot.
        ulong ties = Vector512
            .LessThanOrEqual(least, Vector512.Create(ratioLeast + 1e-7f))
            .ExtractMostSignificantBits();
        int best = where.GetElement(BitOperations.TrailingZeroCount(ties));
        for (ties &= ties - 1; ties != 0; ties &= ties - 1)
        {
            int j = where.GetElement(BitOperations.TrailingZeroCount(ties));
            if (MathF.Abs(alpha[j]) > MathF.Abs(alpha[best]))
            {
                best = j;
            }
        }

        return best;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Pivot(float* t, float* beta, int row, int column, bool below)
    {
        int leaving = _basic[row];
        float target = below ? _rowLow[row] : _rowHigh[row];
        float* r = t + (row * _stride);
        float inverse = 1 / r[column];
        float delta = (target - beta[row]) * inverse;

        // Whole vectors only: a single float written into a vector that is read next would stall the processor.
        Vector512<float> here = Vector512
            .Equals(Vector512<int>.Indices, Vector512.Create(column % Lanes))
            .AsSingle();
        int home = column / Lanes * Lanes;
        var scale = Vector512.Create(-inverse);
        for (int j = 0; j < _stride; j += Lanes)
        {
            (Vector512.Load(r + j) * scale).Store(r + j);
        }

        Vector512
            .ConditionalSelect(here, Vector512.Create(inverse), Vector512.Load(r + home))
            .Store(r + home);
        if (_stride == Lanes)
        {
            Vector512<float> pivot = Vector512.Load(r);
            for (int k = 0; k <= _m; k++)
            {
                float* q = t + (k * Lanes);
                float factor = q[column];
                if (k == row || factor == 0)
                {
                    continue;
                }

                // The row of costs has a place after the others; its sum is of no use.
                beta[k] += factor * delta;
                Vector512
                    .FusedMultiplyAdd(
                        Vector512.Create(factor),
                        pivot,
                        Vector512.AndNot(Vector512.Load(q), here)
                    )
                    .Store(q);
            }
        }
        else
        {
            for (int k = 0; k <= _m; k++)
            {
                float* q = t + (k * _stride);
                float factor = q[column];
                if (k == row || factor == 0)
                {
                    continue;
                }

                beta[k] += factor * delta;
                var f = Vector512.Create(factor);
                Vector512.AndNot(Vector512.Load(q + home), here).Store(q + home);
                for (int j = 0; j < _stride; j += Lanes)
                {
                    Vector512
                        .FusedMultiplyAdd(f, Vector512.Load(r + j), Vector512.Load(q + j))
                        .Store(q + j);
                }
            }
        }

        beta[row] = _at[column] + delta;
        int entering = _nonbasic[column];
        _basic[row] = entering;
        _rowLow[row] = _low[entering];
        _rowHigh[row] = _high[entering];
        _nonbasic[column] = leaving;
        _at[column] = target;
        _side[column] =
            _low[leaving] == _high[leaving] ? 0
            : below ? 1
            : -1;
    }

    private void Finish()
    {
        Array.Clear(Y);
        for (int j = 0; j < _n; j++)
        {
            int v = _nonbasic[j];
            if (v < _n)
            {
                X[v] = _at[j];
            }
            else
            {
                Y[v - _n] = Math.Max(0, _t[(_m * _stride) + j]);
            }
        }

        for (int k = 0; k < _m; k++)
        {
            if (_basic[k] < _n)
            {
                X[_basic[k]] = _beta[k];
            }
        }
    }

    private void Certificate(int row, bool below)
    {
        Array.Clear(Y);
        float sign = below ? -1 : 1;
        for (int j = 0; j < _n; j++)
        {
            if (_nonbasic[j] >= _n)
            {
                Y[_nonbasic[j] - _n] = Math.Max(0, sign * _t[(row * _stride) + j]);
            }
        }

        if (_basic[row] >= _n)
        {
            Y[_basic[row] - _n] = 1;
        }
    }

    private static float Most(Vector512<float> v)
    {
        Vector256<float> a = Vector256.MaxNative(v.GetLower(), v.GetUpper());
        Vector128<float> b = Vector128.MaxNative(a.GetLower(), a.GetUpper());
        b = Vector128.MaxNative(b, Vector128.Shuffle(b, Vector128.Create(2, 3, 0, 1)));
        b = Vector128.MaxNative(b, Vector128.Shuffle(b, Vector128.Create(1, 0, 3, 2)));
        return b.ToScalar();
    }
}
