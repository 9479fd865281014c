namespace Heapwright.Numerics.Search;

/// <summary>
/// Exact search by boxes. A box (bounds of the amounts, slices of two cones of the nominal rows) is discarded when more scenarios
/// than may fail cannot be satisfied anywhere in it; a scenario is shown to be lost by a certificate, a weighted sum of its rows and
/// the forms whose largest value over the box is below zero. One certificate, found by a small linear program for one scenario, is
/// tried on all scenarios at once, and carried down the tree. Small boxes are tried point by point.
/// </summary>
internal sealed partial class BoxSearch
{
    /// <summary>Boxes of at most this many points are tried point by point.</summary>
    private const double FewPoints = 12;

    private const double ThinnestSlice = 0.03;

    /// <summary>Nodes before the first interlude, and how many times more before the next.</summary>
    private const long FirstInterlude = 200;
    private const long InterludeGrowth = 8;

    private readonly PreparedProblem _p;
    private readonly LinearForms _forms;
    private readonly SearchClock _clock;
    private readonly LeafTest _leaf;
    private readonly List<BoxNode> _stack = [];
    private readonly int _mayFail;
    private readonly double[] _x;
    private readonly SingleRows _single;
    private readonly int _padded;
    private Func<double[], double> _offer = static _ => double.NaN;
    private Func<double> _interlude = static () => double.NaN;
    private long _visited;
    private long _nextInterlude;

    internal BoxSearch(
        PreparedProblem p,
        SingleRows single,
        LinearForms forms,
        SearchClock clock,
        LeafTest leaf
    )
    {
        _p = p;
        _forms = forms;
        _clock = clock;
        _leaf = leaf;
        _mayFail = p.S - p.Need;
        _x = new double[p.N];
        _impact = Impacts(p);
        _halves = new Halves[p.N];
        _magnitude = Magnitudes(p, forms);
        _rounding = RoundingShare(p);
        _program = new QuickDualSimplex(p.N + 2, forms.Count + p.R);
        _single = single;
        _padded = _single.Padded;
        _sigma = Spreads(p);
        for (int r = 0; r < p.R; r++)
        {
            _sigma[r] *= _single.Scale[r];
            _single.SetMargin(r, p.N, (float)_sigma[r]);
        }

        _inverseSigma = [.. _sigma.Select(v => (float)(1 / v))];
        _formScale = [.. _magnitude.Select(m => m > 0 ? SingleRows.Size / m : 1)];
        _formRows = new float[forms.Count * _program.Stride];
        _formRight = new float[forms.Count];
        _cost = new float[p.N + 2];
        _low = new float[p.N + 2];
        _high = new float[p.N + 2];
        _slacks = new float[_padded];
        _scratch = new float[_padded];
        _trial = new float[_padded];
        _trialForms = new double[forms.Values.Length];
        _mu = new float[p.N];
        _surrogate = new double[forms.Width];
        _multipliers = RootBound.Multipliers(p, forms);
    }

    /// <summary>
    /// Searches all points whose current objective is at most <paramref name="cutoff"/>. Every feasible one is handed to
    /// <paramref name="offer"/>, which returns the cutoff to go on with. True: the search was complete.
    /// </summary>
    /// <param name="cutoff">Where to begin.</param>
    /// <param name="offer">Takes feasible amounts.</param>
    /// <param name="interlude">Called now and then, more and more seldom, to look for better amounts elsewhere; returns the cutoff to go on with.</param>
    internal bool Run(double cutoff, Func<double[], double> offer, Func<double>? interlude = null)
    {
        _offer = offer;
        _interlude = interlude ?? (static () => double.NaN);
        _nextInterlude = interlude is null ? long.MaxValue : FirstInterlude;
        SetCutoff(cutoff);
        BoxNode root = Frame(0);
        _p.Source.Lower.CopyTo(root.Low, 0);
        _p.Source.Upper.CopyTo(root.High, 0);
        root.SliceA = (0, 1);
        root.SliceB = (0, 1);
        _forms.Values.CopyTo(root.OwnForms, 0);
        root.Forms = root.OwnForms;
        Array.Fill(root.Least, float.MaxValue);
        root.Lost = 0;
        root.Certificates = 0;
        root.Narrowings = 0;
        root.Witnesses = 0;
        if (Tighten(root))
        {
            Visit(0);
        }

        return !_clock.Ended;
    }

    private BoxNode Frame(int depth)
    {
        while (_stack.Count <= depth)
        {
            _stack.Add(new BoxNode(_p, _forms, _padded));
        }

        return _stack[depth];
    }

    private void SetCutoff(double cutoff)
    {
        SetSurrogate(cutoff);
        int at = (_forms.Cutoff * _forms.Width) + _p.N + 1;
        _forms.Values[at] = cutoff;
        foreach (BoxNode node in _stack)
        {
            node.OwnForms[at] = cutoff;
        }
    }

    private void Visit(int depth)
    {
        if (!_clock.Count())
        {
            return;
        }

        if (++_visited == _nextInterlude)
        {
            _nextInterlude *= InterludeGrowth;
            SetCutoff(_interlude());
        }

        BoxNode node = _stack[depth];
        if (Points(node) <= FewPoints)
        {
            if (Probe(node))
            {
                TryAll(node);
            }

            return;
        }

        if (!Probe(node))
        {
            return;
        }

        if (!Shave(node, out float near))
        {
            return;
        }

        (int dimension, bool highFirst) = ChooseSplit(node, near);
        if (dimension < 0)
        {
            // Nothing left to split but thin slices: the amounts are then few enough, or this cannot happen.
            TryAll(node);
            return;
        }

        for (int side = 0; side < 2; side++)
        {
            if (MakeChild(depth, dimension, (side == 0) == highFirst))
            {
                Visit(depth + 1);
            }

            if (_clock.Ended)
            {
                return;
            }
        }
    }

    private double Points(BoxNode node)
    {
        double points = 1;
        for (int i = 0; i < _p.N; i++)
        {
            points *= node.High[i] - node.Low[i] + 1;
        }

        return points;
    }

    private void TryAll(BoxNode node)
    {
        node.Low.CopyTo(_x, 0);
        while (true)
        {
            if (_leaf.Feasible(_x, _forms))
            {
                SetCutoff(_offer(_x));
            }

            int at = 0;
            while (at < _p.N && _x[at] >= node.High[at])
            {
                _x[at] = node.Low[at];
                at++;
            }

            if (at == _p.N)
            {
                return;
            }

            _x[at]++;
        }
    }

    /// <summary>Fills the frame below with one half of a node; false if it is already known to be empty.</summary>
    private bool MakeChild(int depth, int dimension, bool high)
    {
        BoxNode child = Frame(depth + 1);
        BoxNode node = _stack[depth];
        node.Low.CopyTo(child.Low, 0);
        node.High.CopyTo(child.High, 0);
        child.SliceA = node.SliceA;
        child.SliceB = node.SliceB;
        child.Forms = node.Forms;
        if (dimension < _p.N)
        {
            double middle = Middle(node, dimension);
            Inherit(node, child);
            Narrow(
                node,
                child,
                dimension,
                high ? middle + 1 : node.Low[dimension],
                high ? node.High[dimension] : middle
            );
        }
        else
        {
            (double from, double to) = dimension == _p.N ? node.SliceA : node.SliceB;
            double middle = 0.5 * (from + to);
            (double, double) half = high ? (middle, to) : (from, middle);
            if (dimension == _p.N)
            {
                child.SliceA = half;
            }
            else
            {
                child.SliceB = half;
            }

            SlicedForms(node.Forms, child.SliceA, child.SliceB, dimension, child.OwnForms);
            child.Forms = child.OwnForms;
            Inherit(node, child);
            Anew(child);
        }

        if (child.Lost > _mayFail)
        {
            return false;
        }

        KeepWitnesses(node, child, dimension);
        return Tighten(child);
    }

    private void SlicedForms(
        double[] from,
        (double From, double To) a,
        (double From, double To) b,
        int dimension,
        double[] into
    )
    {
        from.CopyTo(into, 0);
        if (dimension == _p.N)
        {
            _forms.Slice(_forms.PairA, a.From, a.To, into);
        }
        else
        {
            _forms.Slice(_forms.PairB, b.From, b.To, into);
        }
    }

    private static double Middle(BoxNode node, int i) =>
        Math.Floor(0.5 * (node.Low[i] + node.High[i]));
}
