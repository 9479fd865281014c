using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Search;

/// <summary>
/// Small dense linear programs: minimise c·x subject to rows a_k·x ≥ b_k and finite bounds l ≤ x ≤ u, by the dual simplex method
/// on the full tableau. With finite bounds a dual feasible start always exists, so there is no first phase. The multipliers y ≥ 0
/// are what the search lives on: any y ≥ 0 gives a valid bound, so rounding can weaken a bound but never make it wrong.
/// Scratch memory is reused; not for use by two threads.
/// </summary>
internal sealed unsafe class BoundedDualSimplex
{
    private const double PivotTolerance = 1e-9;
    private const int Lanes = 8;
    private readonly int _n;
    private readonly int _stride;
    private readonly double[] _t;
    private readonly double[] _beta;
    private readonly double[] _at;
    private readonly int[] _basic;
    private readonly int[] _nonbasic;
    private readonly double[] _side;
    private readonly double[] _low;
    private readonly double[] _high;
    private int _m;

    internal BoundedDualSimplex(int variables, int mostRows)
    {
        _n = variables;
        _stride = (variables + Lanes - 1) / Lanes * Lanes;

        // The last row holds the reduced costs, so that a pivot treats them like any other row.
        _t = new double[(mostRows + 1) * _stride];
        _beta = new double[mostRows + 1];
        _at = new double[variables];
        _basic = new int[mostRows];
        _nonbasic = new int[variables];
        _side = new double[_stride];
        _low = new double[variables + mostRows];
        _high = new double[variables + mostRows];
        X = new double[variables];
        Y = new double[mostRows];
    }

    /// <summary>A bound may be missed by this much, absolute.</summary>
    internal double Feasibility { get; init; } = 1e-9;

    /// <summary>Doubles from one row to the next in <see cref="Tableau"/>.</summary>
    internal int Stride => _stride;

    /// <summary>Row coefficients to be filled before <see cref="Start"/>, [row, variable] at <see cref="Stride"/>; overwritten by the solve.</summary>
    internal Span<double> Tableau => _t;

    /// <summary>Solution after a feasible solve, [variable].</summary>
    internal double[] X { get; }

    /// <summary>Multipliers, [row], ≥ 0: the dual solution, or after an infeasible solve a certificate: max over the bounds of Σ y_k (a_k·x − b_k) is below 0.</summary>
    internal double[] Y { get; }

    /// <summary>Pivots of the last solve.</summary>
    internal int Pivots { get; private set; }

    /// <summary>Loads a whole problem; <paramref name="rows"/> is [row, variable], row-major and dense.</summary>
    internal void Load(
        ReadOnlySpan<double> cost,
        ReadOnlySpan<double> rows,
        ReadOnlySpan<double> right,
        ReadOnlySpan<double> low,
        ReadOnlySpan<double> high
    )
    {
        for (int k = 0; k < right.Length; k++)
        {
            rows.Slice(k * _n, _n).CopyTo(_t.AsSpan(k * _stride));
        }

        Start(cost, right, low, high);
    }

    /// <summary>Starts from the rows already written to <see cref="Tableau"/>.</summary>
    internal void Start(
        ReadOnlySpan<double> cost,
        ReadOnlySpan<double> right,
        ReadOnlySpan<double> low,
        ReadOnlySpan<double> high
    )
    {
        _m = right.Length;
        Span<double> d = _t.AsSpan(_m * _stride, _stride);
        d.Clear();
        cost[.._n].CopyTo(d);
        for (int j = 0; j < _n; j++)
        {
            _nonbasic[j] = j;
            _low[j] = low[j];
            _high[j] = high[j];
            bool up = cost[j] < 0;
            _at[j] = up ? high[j] : low[j];
            _side[j] = Side(j, up);
        }

        for (int k = 0; k < _m; k++)
        {
            _basic[k] = _n + k;
            _low[_n + k] = 0;
            _high[_n + k] = double.PositiveInfinity;
            Span<double> row = _t.AsSpan(k * _stride, _stride);
            row[_n..].Clear();
            double sum = -right[k];
            for (int j = 0; j < _n; j++)
            {
                sum += row[j] * _at[j];
            }

            _beta[k] = sum;
        }
    }

    /// <summary>Runs to the optimum. False: infeasible, with a certificate in <see cref="Y"/>; null: stopped at the pivot limit, with valid multipliers.</summary>
    internal bool? Solve(int mostPivots = 400)
    {
        Pivots = 0;
        while (true)
        {
            int row = Leaving(out bool below);
            if (row < 0)
            {
                Finish();
                return true;
            }

            int column = Entering(row, below);
            if (column < 0)
            {
                Certificate(row, below);
                return false;
            }

            if (Pivots++ >= mostPivots)
            {
                Finish();
                return null;
            }

            Pivot(row, column, below);
        }
    }

    /// <summary>+1 at the lower bound, −1 at the upper, 0 if the variable cannot move.</summary>
    private double Side(int variable, bool up)
    {
        if (_low[variable] == _high[variable])
        {
            return 0;
        }

        return up ? -1 : 1;
    }

    private int Leaving(out bool below)
    {
        int row = -1;
        below = false;
        double worst = Feasibility;
        for (int k = 0; k < _m; k++)
        {
            int v = _basic[k];
            double under = _low[v] - _beta[k];
            double over = _beta[k] - _high[v];
            if (under > worst)
            {
                (worst, row, below) = (under, k, true);
            }
            else if (over > worst)
            {
                (worst, row, below) = (over, k, false);
            }
        }

        return row;
    }

    private int Entering(int row, bool below)
    {
        int best = -1;
        double bestRatio = double.PositiveInfinity;
        double bestSize = 0;
        double sign = below ? 1 : -1;
        ReadOnlySpan<double> alpha = _t.AsSpan(row * _stride, _n);
        ReadOnlySpan<double> d = _t.AsSpan(_m * _stride, _n);
        ReadOnlySpan<double> side = _side.AsSpan(0, _n);
        for (int j = 0; j < alpha.Length && j < d.Length && j < side.Length; j++)
        {
            // Moving x_j off its bound must bring the leaving variable back to its own.
            double a = sign * side[j] * alpha[j];
            if (a <= PivotTolerance)
            {
                continue;
            }

            double ratio = Math.Abs(d[j]) / a;
            if (ratio < bestRatio - 1e-12 || (ratio <= bestRatio + 1e-12 && a > bestSize))
            {
                (best, bestRatio, bestSize) = (j, ratio, a);
            }
        }

        return best;
    }

    private void Pivot(int row, int column, bool below)
    {
        int leaving = _basic[row];
        double target = below ? _low[leaving] : _high[leaving];
        fixed (double* t = _t)
        {
            double* r = t + (row * _stride);
            double inverse = 1 / r[column];
            double delta = (target - _beta[row]) * inverse;
            var scale = Vector512.Create(-inverse);
            for (int j = 0; j < _stride; j += Lanes)
            {
                (Vector512.Load(r + j) * scale).Store(r + j);
            }

            r[column] = inverse;
            for (int k = 0; k <= _m; k++)
            {
                double* q = t + (k * _stride);
                double factor = q[column];
                if (k == row || factor == 0)
                {
                    continue;
                }

                _beta[k] += factor * delta;
                q[column] = 0;
                var f = Vector512.Create(factor);
                for (int j = 0; j < _stride; j += Lanes)
                {
                    (Vector512.Load(q + j) + (f * Vector512.Load(r + j))).Store(q + j);
                }
            }

            _beta[row] = _at[column] + delta;
        }

        _basic[row] = _nonbasic[column];
        _nonbasic[column] = leaving;
        _side[column] = Side(leaving, !below);
        _at[column] = target;
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
        double sign = below ? -1 : 1;
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
}
