namespace Heapwright.Numerics.Search;

/// <summary>
/// Objectives one after the other: anneal for a start, prove the first by boxes, keep its value, prove the second, and so on.
/// </summary>
internal sealed class StagedSearch
{
    private const int FirstProposals = 500;
    private const int MostProposals = 256_000;

    // Light and heavy: either finds what the other misses.
    private static readonly double[] Missing = [0.4, 1];

    private readonly PreparedProblem _p;
    private readonly SearchClock _clock;
    private readonly ShareSweep _judge;
    private readonly LeafTest _leaf;
    private readonly SingleRows _single;
    private readonly AnnealedStart _anneal;
    private ulong _seed;
    private int _proposals = FirstProposals;
    private readonly int _objectives;
    private double[]? _best;
    private double[] _value = [];

    internal StagedSearch(PreparedProblem full, SearchClock clock)
    {
        _p = full.S == 0 || full.Need == 0 ? new PreparedProblem(full.Source.NominalOnly()) : full;
        _clock = clock;
        _judge = new ShareSweep(full);
        _leaf = new LeafTest(_p);
        _single = new SingleRows(_p);
        _anneal = new AnnealedStart(_p, _single);
        _objectives = full.Source.Objectives.Length;
    }

    internal ChanceAnswer Run()
    {
        var kept = new double[_objectives];
        double bound = double.NegativeInfinity;
        for (int o = 0; o < _objectives && !_clock.Ended; o++)
        {
            var forms = new LinearForms(_p, o, kept);
            Start(o);
            if (o == 0)
            {
                bound = RootBound.Of(_p, forms, o);
            }

            var search = new BoxSearch(_p, _single, forms, _clock, _leaf);
            int objective = o;
            bool complete = search.Run(
                Cutoff(o),
                x => Offer(x, objective),
                o == 0 ? Interlude : null
            );
            if (_best is null)
            {
                return Nothing(complete, bound);
            }

            kept[o] = _value[o];
            if (o == 0 && complete)
            {
                bound = _value[0];
            }
        }

        return Answer(
            _best!,
            _value,
            _clock.Ended ? SearchStatus.Feasible : SearchStatus.Optimal,
            bound
        );
    }

    /// <summary>Up to <paramref name="most"/> feasible amounts with the first objective within <paramref name="gap"/> of the optimum.</summary>
    internal IReadOnlyList<ChanceAnswer> List(int most, double gap)
    {
        ChanceAnswer first = Run();
        if (_best is null)
        {
            return [];
        }

        if (most == 1)
        {
            return [first];
        }

        double limit = _value[0] + gap;
        limit += PreparedProblem.Width(limit);
        var list = new RankedList(_p, most, (double[])_best.Clone());
        if (!_clock.Ended)
        {
            var forms = new LinearForms(_p, 0, new double[_objectives]);
            double step = Step(0);
            new BoxSearch(_p, _single, forms, _clock, _leaf).Run(
                limit,
                x =>
                {
                    list.Add(x);
                    return list.Full ? Math.Min(limit, Below(list.Worst, step)) : limit;
                }
            );
        }

        SearchStatus status = _clock.Ended ? SearchStatus.Feasible : SearchStatus.Optimal;
        return [.. list.Entries.Select(x => Answer(x, list.Values(x), status, first.Bound))];
    }

    /// <summary>Anneals from where we are; the proof that follows cuts by what is found.</summary>
    private void Start(int o)
    {
        if (o == 0)
        {
            Anneal();
        }
    }

    /// <summary>When the tree turns out to be large, more effort for a good answer pays.</summary>
    private double Interlude()
    {
        _proposals = Math.Min(MostProposals, 8 * _proposals);
        Anneal();
        return Cutoff(0);
    }

    private void Anneal()
    {
        foreach (double missing in Missing)
        {
            double[] from =
                _best
                ??
                [
                    .. Enumerable
                        .Range(0, _p.N)
                        .Select(i => Math.Clamp(1, _p.Source.Lower[i], _p.Source.Upper[i])),
                ];
            _anneal.Run(
                0,
                from,
                _seed++,
                _proposals,
                missing,
                x =>
                {
                    if (_leaf.Feasible(x))
                    {
                        Offer(x, 0);
                    }
                }
            );
        }
    }

    /// <summary>Keeps x if it is better (objectives from o on); returns the cutoff to go on with.</summary>
    private double Offer(double[] x, int o)
    {
        double[] value = [.. Enumerable.Range(0, _objectives).Select(k => _p.Objective(k, x))];
        if (_best is null || Better(value, _value, o))
        {
            _best = (double[])x.Clone();
            _value = value;
        }

        return Cutoff(o);
    }

    private static bool Better(double[] a, double[] b, int from)
    {
        for (int o = from; o < a.Length; o++)
        {
            if (Math.Abs(a[o] - b[o]) > PreparedProblem.Width(b[o]))
            {
                return a[o] < b[o];
            }
        }

        return false;
    }

    private double Cutoff(int o)
    {
        if (_best is null)
        {
            double most = 0;
            for (int i = 0; i < _p.N; i++)
            {
                double c = _p.Source.Objectives[o][i];
                most += Math.Max(c * _p.Source.Lower[i], c * _p.Source.Upper[i]);
            }

            return most + PreparedProblem.Width(most);
        }

        return Below(_value[o], Step(o));
    }

    private double Step(int o) =>
        Granularity.Of(_p.Source.Objectives[o], _p.Source.Lower, _p.Source.Upper);

    /// <summary>The largest value that counts as better than <paramref name="value"/>.</summary>
    private static double Below(double value, double step)
    {
        double width = PreparedProblem.Width(value);
        return step > 4 * width ? value - step + Math.Max(width, 1e-3 * step) : value - width;
    }

    private ChanceAnswer Nothing(bool complete, double bound) =>
        new()
        {
            Status = complete ? SearchStatus.Infeasible : SearchStatus.Unknown,
            Amounts = [],
            Nodes = _clock.Nodes,
            Bound = complete ? double.PositiveInfinity : bound,
        };

    private ChanceAnswer Answer(double[] x, double[] value, SearchStatus status, double bound)
    {
        ShareAnswer share = _judge.Judge(x);
        return new ChanceAnswer
        {
            Status = status,
            Amounts = x,
            FreeLow = share.FreeLow,
            FreeHigh = share.FreeHigh,
            Free = share.Free,
            Share = share.Share,
            Objectives = value,
            Bound = bound,
            Nodes = _clock.Nodes,
        };
    }
}
