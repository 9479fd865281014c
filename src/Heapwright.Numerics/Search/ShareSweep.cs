namespace Heapwright.Numerics.Search;

/// <summary>
/// Finds the free quantity w that serves the most scenarios: each scenario allows an interval of w, the ends are sorted and
/// swept. Holds scratch memory; one instance per search, not for use by two threads.
/// </summary>
internal sealed class ShareSweep(PreparedProblem problem)
{
    private readonly double[] _sums = new double[problem.Stride];
    private readonly double[] _lows = new double[problem.S];
    private readonly double[] _highs = new double[problem.S];

    /// <summary>Judges amounts from scratch. This is the one place that decides what is feasible.</summary>
    internal ShareAnswer Judge(ReadOnlySpan<double> x)
    {
        bool limits = problem.LimitsHold(x);
        bool nominal = problem.NominalInterval(x, out double low, out double high);
        if (!nominal)
        {
            low = 0;
            high = problem.Source.FreeMaximum;
        }

        problem.Sums(x, _sums);
        int alive = Intervals(low, high);
        ShareAnswer answer = Sweep(alive, low, high, problem.Preferred(x));
        bool any = x.ContainsAnyExcept(0.0);
        int held = (int)Math.Round(answer.Share * Math.Max(problem.S, 1));
        return answer with
        {
            NominalHolds = nominal,
            LimitsHold = limits,
            Reached = limits && nominal && any && (problem.S == 0 || held >= problem.Need),
        };
    }

    /// <summary>Share of the scenarios whose rows all hold at x and this w.</summary>
    internal double ShareAt(ReadOnlySpan<double> x, double w)
    {
        if (problem.S == 0)
        {
            return 1;
        }

        problem.Sums(x, _sums);
        int held = 0;
        for (int s = 0; s < problem.S; s++)
        {
            if (
                Interval(s, 0, problem.Source.FreeMaximum, out double low, out double high)
                && low <= w
                && w <= high
            )
            {
                held++;
            }
        }

        return (double)held / problem.S;
    }

    private int Intervals(double low, double high)
    {
        int alive = 0;
        for (int s = 0; s < problem.S; s++)
        {
            if (Interval(s, low, high, out double from, out double to))
            {
                _lows[alive] = from;
                _highs[alive] = to;
                alive++;
            }
        }

        return alive;
    }

    private bool Interval(int s, double low, double high, out double from, out double to)
    {
        from = low;
        to = high;
        for (int r = 0; r < problem.R; r++)
        {
            double sum = _sums[(r * problem.Padded) + s];
            if (r < problem.FlatRows)
            {
                if (sum < 0)
                {
                    return false;
                }
            }
            else if (r < problem.FlatRows + problem.LowerRows)
            {
                from = Math.Max(from, -sum);
            }
            else
            {
                to = Math.Min(to, sum);
            }
        }

        return from <= to;
    }

    private ShareAnswer Sweep(int alive, double low, double high, double preferred)
    {
        if (problem.S == 0)
        {
            double w = Math.Clamp(preferred, low, high);
            return new ShareAnswer(1, w, low, high, true, true, true);
        }

        if (alive == 0)
        {
            double w = Math.Clamp(preferred, low, high);
            return new ShareAnswer(0, w, low, high, true, true, problem.Need == 0);
        }

        Span<double> lows = _lows.AsSpan(0, alive);
        Span<double> highs = _highs.AsSpan(0, alive);
        lows.Sort();
        highs.Sort();
        int most = 0;
        for (int i = 0, j = 0; i < alive; i++)
        {
            while (highs[j] < lows[i])
            {
                j++;
            }

            most = Math.Max(most, i + 1 - j);
        }

        // Without the wanted share, the stretch is where the best share holds.
        (double from, double to) =
            problem.Need == 0
                ? (low, high)
                : Stretch(lows, highs, Math.Min(most, problem.Need), low, high, preferred);
        int best = BestWithin(lows, highs, from, to);
        (double bestFrom, double bestTo) = Stretch(lows, highs, best, from, to, preferred);
        double middle = bestFrom + (0.5 * (bestTo - bestFrom));
        return new ShareAnswer((double)best / problem.S, middle, from, to, true, true, true);
    }

    /// <summary>Most intervals that overlap at one point of [from, to].</summary>
    private static int BestWithin(
        ReadOnlySpan<double> lows,
        ReadOnlySpan<double> highs,
        double from,
        double to
    )
    {
        int best = 0;
        int j = 0;
        for (int i = 0; i < lows.Length && lows[i] <= to; i++)
        {
            double at = Math.Max(lows[i], from);
            while (highs[j] < at)
            {
                j++;
            }

            // Intervals that start at or before `at` are counted when the last of them comes up.
            best = Math.Max(best, i + 1 - j);
        }

        return best;
    }

    /// <summary>The maximal stretch of [from, to] covered at least <paramref name="count"/> times that lies nearest to the preferred point.</summary>
    private static (double From, double To) Stretch(
        ReadOnlySpan<double> lows,
        ReadOnlySpan<double> highs,
        int count,
        double from,
        double to,
        double preferred
    )
    {
        double bestFrom = double.NaN;
        double bestTo = double.NaN;
        double bestDistance = double.PositiveInfinity;
        int i = 0;
        int j = 0;
        int open = 0;
        double start = double.NaN;
        while (j < highs.Length)
        {
            if (i < lows.Length && lows[i] <= highs[j])
            {
                open++;
                if (open == count)
                {
                    start = lows[i];
                }

                i++;
                continue;
            }

            if (open == count)
            {
                double a = Math.Max(start, from);
                double b = Math.Min(highs[j], to);
                double distance = Math.Max(0, Math.Max(a - preferred, preferred - b));
                if (a <= b && distance < bestDistance)
                {
                    (bestFrom, bestTo, bestDistance) = (a, b, distance);
                }
            }

            open--;
            j++;
        }

        return (bestFrom, bestTo);
    }
}
