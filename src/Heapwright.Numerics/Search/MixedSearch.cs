namespace Heapwright.Numerics.Search;

/// <summary>
/// Whole and continuous amounts together where at most one scenario must hold: branch and bound on the whole ones, with linear
/// programs as bounds. Objectives one after the other, as in <see cref="StagedSearch"/>.
/// <para>
/// "Not all zero" cannot be said by closed linear rows; when every lower bound is zero it is read as Σ xᵢ/Upperᵢ ≥ 1e-6.
/// </para>
/// </summary>
internal sealed class MixedSearch
{
    private const double LeastTogether = 1e-6;
    private const double Whole = 1e-7;
    private const double Feasibility = 1e-11;

    private readonly PreparedProblem _p;
    private readonly SearchClock _clock;
    private readonly ShareSweep _judge;
    private readonly int _n;
    private double[]? _best;
    private double[] _value = [];

    internal MixedSearch(PreparedProblem full, SearchClock clock)
    {
        _p = full.S == 0 || full.Need == 0 ? new PreparedProblem(full.Source.NominalOnly()) : full;
        _clock = clock;
        _judge = new ShareSweep(full);
        _n = full.N;
    }

    internal ChanceAnswer Run()
    {
        int objectives = _p.Source.Objectives.Length;
        var kept = new double[objectives];
        double bound = double.NegativeInfinity;
        for (int o = 0; o < objectives && !_clock.Ended; o++)
        {
            (double[] rows, double[] right) = Rows(o, kept);
            var program = new BoundedDualSimplex(_n + 1, right.Length)
            {
                Feasibility = Feasibility,
            };
            double[] low = [.. _p.Source.Lower, 0];
            double[] high = [.. _p.Source.Upper, _p.Source.FreeMaximum];
            double root = Visit(program, o, rows, right, low, high);
            if (o == 0)
            {
                bound = root;
            }

            if (_best is null)
            {
                return new ChanceAnswer
                {
                    Status = _clock.Ended ? SearchStatus.Unknown : SearchStatus.Infeasible,
                    Amounts = [],
                    Nodes = _clock.Nodes,
                    Bound = _clock.Ended ? bound : double.PositiveInfinity,
                };
            }

            kept[o] = _value[o];
            if (o == 0 && !_clock.Ended)
            {
                bound = _value[0];
            }
        }

        ShareAnswer share = _judge.Judge(_best!);
        return new ChanceAnswer
        {
            Status = _clock.Ended ? SearchStatus.Feasible : SearchStatus.Optimal,
            Amounts = _best!,
            FreeLow = share.FreeLow,
            FreeHigh = share.FreeHigh,
            Free = share.Free,
            Share = share.Share,
            Objectives = _value,
            Bound = bound,
            Nodes = _clock.Nodes,
        };
    }

    /// <summary>All rows as a·(x, w) ≥ b, each divided by its largest coefficient so that one tolerance fits all.</summary>
    private (double[] Rows, double[] Right) Rows(int o, double[] kept)
    {
        var rows = new List<double[]>();
        var right = new List<double>();
        void Add(Func<int, double> coefficient, double slope, double least)
        {
            double[] row = [.. Enumerable.Range(0, _n).Select(coefficient), slope];
            double scale = row.Max(Math.Abs);
            if (scale > 0)
            {
                rows.Add([.. row.Select(a => a / scale)]);
                right.Add(least / scale);
            }
            else if (least > 0)
            {
                // 0 ≥ positive: kept as a row nobody can satisfy.
                rows.Add(row);
                right.Add(1);
            }
        }

        ChanceProblem source = _p.Source;
        for (int k = 0; k < _p.K; k++)
        {
            int limit = k;
            Add(i => -source.LimitCoefficients[(limit * _n) + i], 0, -source.Limits[k]);
        }

        for (int earlier = 0; earlier < o; earlier++)
        {
            double[] c = source.Objectives[earlier];
            Add(i => -c[i], 0, -(kept[earlier] + (0.5 * PreparedProblem.Width(kept[earlier]))));
        }

        for (int r = 0; r < _p.R; r++)
        {
            int row = r;
            Add(i => _p.NominalColumns[(i * _p.R) + row], _p.Slope(r), 0);
            Add(i => _p.Columns[(i * _p.Stride) + (row * _p.Padded)], _p.Slope(r), 0);
        }

        if (source.Lower.All(l => l == 0))
        {
            Add(i => source.Upper[i] > 0 ? 1 / source.Upper[i] : 0, 0, LeastTogether);
        }

        return ([.. rows.SelectMany(r => r)], [.. right]);
    }

    /// <summary>Searches a box; returns the bound of its linear program.</summary>
    private double Visit(
        BoundedDualSimplex program,
        int o,
        double[] rows,
        double[] right,
        double[] low,
        double[] high
    )
    {
        if (!_clock.Count())
        {
            return double.NegativeInfinity;
        }

        double[] cost = [.. _p.Source.Objectives[o], 0];
        program.Load(cost, rows, right, low, high);
        bool? solved = program.Solve(10_000);
        if (solved == false)
        {
            return double.PositiveInfinity;
        }

        double[] x = program.X[.._n];
        double value = 0;
        for (int i = 0; i < _n; i++)
        {
            value += cost[i] * x[i];
        }

        if (solved is null)
        {
            value = double.NegativeInfinity;
        }

        if (_best is not null && value > _value[o] - PreparedProblem.Width(_value[o]))
        {
            return value;
        }

        int branch = MostFractional(x, low, high);
        if (branch < 0)
        {
            Accept(program, o, rows, right, low, high, x);
            return value;
        }

        double down = Math.Floor(x[branch]);
        bool upFirst = x[branch] - down > 0.5;
        for (int side = 0; side < 2; side++)
        {
            double[] childLow = (double[])low.Clone();
            double[] childHigh = (double[])high.Clone();
            if ((side == 0) == upFirst)
            {
                childLow[branch] = down + 1;
            }
            else
            {
                childHigh[branch] = down;
            }

            Visit(program, o, rows, right, childLow, childHigh);
        }

        return value;
    }

    private int MostFractional(double[] x, double[] low, double[] high)
    {
        int branch = -1;
        double most = Whole;
        for (int i = 0; i < _n; i++)
        {
            if (_p.Source.IsContinuous(i) || low[i] == high[i])
            {
                continue;
            }

            double off = Math.Abs(x[i] - Math.Round(x[i]));
            if (off > most)
            {
                (branch, most) = (i, off);
            }
        }

        return branch;
    }

    /// <summary>Fixes the whole amounts at their rounded values, solves the rest once more and keeps it if it is better.</summary>
    private void Accept(
        BoundedDualSimplex program,
        int o,
        double[] rows,
        double[] right,
        double[] low,
        double[] high,
        double[] x
    )
    {
        double[] fixedLow = (double[])low.Clone();
        double[] fixedHigh = (double[])high.Clone();
        for (int i = 0; i < _n; i++)
        {
            if (!_p.Source.IsContinuous(i))
            {
                fixedLow[i] = Math.Round(x[i]);
                fixedHigh[i] = fixedLow[i];
            }
        }

        program.Load([.. _p.Source.Objectives[o], 0], rows, right, fixedLow, fixedHigh);
        if (program.Solve(10_000) != true)
        {
            return;
        }

        double[] found = program.X[.._n];
        for (int i = 0; i < _n; i++)
        {
            found[i] = Math.Clamp(found[i], fixedLow[i], fixedHigh[i]);
        }

        if (!_judge.Judge(found).Reached)
        {
            return;
        }

        double[] value =
        [
            .. Enumerable.Range(0, _p.Source.Objectives.Length).Select(k => _p.Objective(k, found)),
        ];
        if (_best is null || value[o] < _value[o] - PreparedProblem.Width(_value[o]))
        {
            (_best, _value) = (found, value);
        }
    }
}
