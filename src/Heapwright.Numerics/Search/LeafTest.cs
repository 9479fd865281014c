namespace Heapwright.Numerics.Search;

/// <summary>Exact and quick test of single points; what it accepts is what <see cref="ShareSweep.Judge"/> calls feasible.</summary>
internal sealed class LeafTest(PreparedProblem p)
{
    private readonly double[] _sums = new double[p.Stride];
    private readonly double[] _lows = new double[p.S];
    private readonly double[] _highs = new double[p.S];
    private readonly double[] _copy = new double[p.S];

    /// <summary>Points tested.</summary>
    internal long Tested { get; private set; }

    /// <summary>True if x keeps the objective forms, the limits, the nominal rows and the wanted share at one w, and is not zero.</summary>
    internal bool Feasible(ReadOnlySpan<double> x, LinearForms forms)
    {
        Tested++;
        for (int q = p.K; q <= forms.Cutoff; q++)
        {
            ReadOnlySpan<double> row = forms.Row(q);
            double sum = row[p.N + 1];
            for (int i = 0; i < p.N; i++)
            {
                sum += row[i] * x[i];
            }

            if (sum < 0)
            {
                return false;
            }
        }

        return Feasible(x);
    }

    /// <summary>True if x keeps the limits, the nominal rows and the wanted share at one w, and is not zero.</summary>
    internal bool Feasible(ReadOnlySpan<double> x)
    {
        return p.LimitsHold(x)
            && p.NominalInterval(x, out double low, out double high)
            && x.ContainsAnyExcept(0.0)
            && Enough(x, low, high);
    }

    private bool Enough(ReadOnlySpan<double> x, double low, double high)
    {
        p.Sums(x, _sums);
        int mayFail = p.S - p.Need;
        int alive = 0;
        for (int s = 0; s < p.S; s++)
        {
            double from = low;
            double to = high;
            bool holds = true;
            for (int r = 0; r < p.R; r++)
            {
                double sum = _sums[(r * p.Padded) + s];
                int slope = p.Slope(r);
                if (slope == 0)
                {
                    holds &= sum >= 0;
                }
                else if (slope > 0)
                {
                    from = Math.Max(from, -sum);
                }
                else
                {
                    to = Math.Min(to, sum);
                }
            }

            if (holds && from <= to)
            {
                _lows[alive] = from;
                _highs[alive] = to;
                alive++;
            }
            else if (s + 1 - alive > mayFail)
            {
                return false;
            }
        }

        return SomeWater(alive, mayFail - (p.S - alive));
    }

    /// <summary>True if some w lies in all but <paramref name="mayFail"/> of the intervals.</summary>
    private bool SomeWater(int alive, int mayFail)
    {
        if (mayFail >= alive)
        {
            return true;
        }

        ReadOnlySpan<double> lows = _lows.AsSpan(0, alive);
        ReadOnlySpan<double> highs = _highs.AsSpan(0, alive);
        Span<double> copy = _copy.AsSpan(0, alive);
        lows.CopyTo(copy);

        // At most mayFail intervals may begin above w, and at most mayFail end below it.
        double least = Selection.Smallest(copy, alive - 1 - mayFail);
        highs.CopyTo(copy);
        double most = Selection.Smallest(copy, mayFail);
        if (least > most)
        {
            return false;
        }

        // The best w is some interval's lower end between the two.
        foreach (double w in lows)
        {
            if (w < least || w > most)
            {
                continue;
            }

            int missed = 0;
            for (int s = 0; s < alive; s++)
            {
                missed += lows[s] > w || highs[s] < w ? 1 : 0;
            }

            if (missed <= mayFail)
            {
                return true;
            }
        }

        return false;
    }
}
