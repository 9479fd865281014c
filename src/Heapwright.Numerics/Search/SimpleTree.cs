namespace Heapwright.Numerics.Search;

/// <summary>Plain depth-first search with interval bounds; correct, not fast.</summary>
internal sealed class SimpleTree
{
    private readonly PreparedProblem _p;
    private readonly SearchBudget _budget;
    private readonly ShareSweep _sweep;
    private readonly int _most;
    private readonly double _gap;
    private readonly double[] _x;
    private readonly double[] _suffix;
    private readonly List<(double[] X, double[] Z, ShareAnswer Share)> _found = [];
    private long _nodes;
    private bool _ended;
    private double _bestShare = double.NaN;

    internal SimpleTree(PreparedProblem p, SearchBudget budget, int most, double gap)
    {
        budget.Check();
        if (p.Source.Continuous.Contains(true))
        {
            throw new ArgumentException(
                "Continuous has a true entry; allowed is false everywhere.",
                nameof(p)
            );
        }

        _p = p;
        _budget = budget;
        _most = most;
        _gap = gap;
        _sweep = new ShareSweep(p);
        _x = new double[p.N];
        _suffix = new double[p.N + 1];
        for (int i = p.N - 1; i >= 0; i--)
        {
            double c = p.Source.Objectives[0][i];
            _suffix[i] = _suffix[i + 1] + Math.Min(c * p.Source.Lower[i], c * p.Source.Upper[i]);
        }
    }

    internal ChanceAnswer Run()
    {
        Visit(0, 0);
        if (_found.Count > 0)
        {
            return List()[0];
        }

        return new ChanceAnswer
        {
            Status = _ended ? SearchStatus.Unknown : SearchStatus.Infeasible,
            Amounts = [],
            Nodes = _nodes,
            Bound = _ended ? _suffix[0] : double.PositiveInfinity,
            BestShareSeen = _bestShare,
        };
    }

    internal IReadOnlyList<ChanceAnswer> List() =>
        [
            .. _found.Select(f => new ChanceAnswer
            {
                Status = _ended ? SearchStatus.Feasible : SearchStatus.Optimal,
                Amounts = f.X,
                FreeLow = f.Share.FreeLow,
                FreeHigh = f.Share.FreeHigh,
                Free = f.Share.Free,
                Share = f.Share.Share,
                Objectives = f.Z,
                Bound = _ended ? _suffix[0] : _found[0].Z[0],
                Nodes = _nodes,
                BestShareSeen = _bestShare,
            }),
        ];

    private void Visit(int depth, double cost)
    {
        if (_ended)
        {
            return;
        }

        _nodes++;
        if (
            _nodes > _budget.Nodes
            || (
                (_nodes & 4095) == 0
                && (
                    _budget.Cancellation.IsCancellationRequested
                    || (_budget.Stop?.Invoke() ?? false)
                )
            )
        )
        {
            _ended = true;
            return;
        }

        if (_found.Count > 0)
        {
            double limit = _found.Count == _most ? _found[^1].Z[0] : double.PositiveInfinity;
            limit = Math.Min(limit, _found[0].Z[0] + _gap);
            if (cost + _suffix[depth] > limit + PreparedProblem.Width(limit))
            {
                return;
            }
        }

        if (depth == _p.N)
        {
            Leaf();
            return;
        }

        for (double v = _p.Source.Lower[depth]; v <= _p.Source.Upper[depth]; v++)
        {
            _x[depth] = v;
            Visit(depth + 1, cost + (v * _p.Source.Objectives[0][depth]));
        }

        _x[depth] = 0;
    }

    private void Leaf()
    {
        if (!_p.LimitsHold(_x) || !_p.NominalInterval(_x, out _, out _))
        {
            return;
        }

        ShareAnswer share = _sweep.Judge(_x);
        if (!(share.Share <= _bestShare))
        {
            _bestShare = share.Share;
        }

        if (!share.Reached)
        {
            return;
        }

        double[] z =
        [
            .. Enumerable.Range(0, _p.Source.Objectives.Length).Select(o => _p.Objective(o, _x)),
        ];
        int at = _found.Count;
        while (at > 0 && Better(z, _found[at - 1].Z))
        {
            at--;
        }

        _found.Insert(at, ((double[])_x.Clone(), z, share));
        double limit = _found[0].Z[0] + _gap;
        _found.RemoveAll(f => f.Z[0] > limit + PreparedProblem.Width(limit));
        if (_found.Count > _most)
        {
            _found.RemoveAt(_found.Count - 1);
        }
    }

    private static bool Better(double[] a, double[] b)
    {
        for (int o = 0; o < a.Length; o++)
        {
            double width = PreparedProblem.Width(b[o]);
            if (Math.Abs(a[o] - b[o]) > width)
            {
                return a[o] < b[o];
            }
        }

        return false;
    }
}
