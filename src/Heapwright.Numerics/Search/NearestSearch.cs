namespace Heapwright.Numerics.Search;

/// <summary>
/// Local search for the least sum of scaled nominal violations, then for the largest share. Moves: one amount by a step, or two
/// amounts by opposite or equal steps; first improvement, from a fixed set of starts.
/// </summary>
internal sealed class NearestSearch
{
    private const int RandomStarts = 8;
    private const int MostRounds = 400;

    private readonly PreparedProblem _p;
    private readonly ShareSweep _sweep;
    private readonly double[] _x;
    private readonly double[][] _steps;
    private readonly double[] _candidates;

    internal NearestSearch(PreparedProblem p)
    {
        _p = p;
        _sweep = new ShareSweep(p);
        _x = new double[p.N];
        _candidates = new double[p.R + 3];
        _steps = [.. Enumerable.Range(0, p.N).Select(Steps)];
    }

    internal NearestAnswer Run()
    {
        double[] best = (double[])_p.Source.Upper.Clone();
        Score bestScore = Judge(best);
        foreach (double[] start in Starts())
        {
            start.CopyTo(_x, 0);
            Score score = Climb();
            if (score.Better(bestScore))
            {
                bestScore = score;
                _x.CopyTo(best, 0);
            }
        }

        var rows = new double[_p.R];
        var limits = new double[_p.K];
        Violation(best, bestScore.Free, rows, limits);
        return new NearestAnswer(
            best,
            bestScore.Free,
            bestScore.Violation,
            rows,
            limits,
            _sweep.ShareAt(best, bestScore.Free),
            [.. Enumerable.Range(0, _p.Source.Objectives.Length).Select(o => _p.Objective(o, best))]
        );
    }

    private IEnumerable<double[]> Starts()
    {
        double[] low = _p.Source.Lower;
        double[] high = _p.Source.Upper;
        yield return (double[])high.Clone();
        yield return [.. Enumerable.Range(0, _p.N).Select(i => Snap(i, 0.5 * (low[i] + high[i])))];
        for (int one = 0; one < _p.N; one++)
        {
            double[] x = (double[])low.Clone();
            x[one] = high[one];
            yield return x;
        }

        var random = new Random(20_260_101);
        for (int k = 0; k < RandomStarts; k++)
        {
            yield return
            [
                .. Enumerable
                    .Range(0, _p.N)
                    .Select(i => Snap(i, low[i] + (random.NextDouble() * (high[i] - low[i])))),
            ];
        }
    }

    private double Snap(int i, double value) =>
        _p.Source.IsContinuous(i) ? value : Math.Round(value);

    private double[] Steps(int i)
    {
        double range = _p.Source.Upper[i] - _p.Source.Lower[i];
        if (range == 0)
        {
            return [];
        }

        return _p.Source.IsContinuous(i)
            ? [.. new[] { 4.0, 16, 64, 256, 1024, 16384 }.Select(d => range / d)]
            : [.. new[] { 1.0, 2, 5, 15 }.Where(s => s <= range)];
    }

    private Score Climb()
    {
        Score score = Judge(_x);
        for (int round = 0; round < MostRounds; round++)
        {
            Score before = score;
            for (int i = 0; i < _p.N; i++)
            {
                foreach (double step in _steps[i])
                {
                    score = TryMove(i, step, -1, 0, score);
                    score = TryMove(i, -step, -1, 0, score);
                }
            }

            if (score.Better(before))
            {
                continue;
            }

            score = Pairs(score);
            if (!score.Better(before))
            {
                break;
            }
        }

        return score;
    }

    private Score Pairs(Score score)
    {
        for (int i = 0; i < _p.N; i++)
        {
            for (int j = 0; j < _p.N; j++)
            {
                if (i == j)
                {
                    continue;
                }

                foreach (double a in _steps[i])
                {
                    foreach (double b in _steps[j])
                    {
                        score = TryMove(i, a, j, -b, score);
                        score = i < j ? TryMove(i, -a, j, -b, TryMove(i, a, j, b, score)) : score;
                    }
                }
            }
        }

        return score;
    }

    private Score TryMove(int i, double a, int j, double b, Score score)
    {
        double oldI = _x[i];
        double oldJ = j < 0 ? 0 : _x[j];
        if (!Inside(i, oldI + a) || (j >= 0 && !Inside(j, oldJ + b)))
        {
            return score;
        }

        _x[i] = oldI + a;
        if (j >= 0)
        {
            _x[j] = oldJ + b;
        }

        Score now = Judge(_x);
        if (now.Better(score))
        {
            return now;
        }

        _x[i] = oldI;
        if (j >= 0)
        {
            _x[j] = oldJ;
        }

        return score;
    }

    private bool Inside(int i, double value) =>
        value >= _p.Source.Lower[i] && value <= _p.Source.Upper[i];

    private Score Judge(ReadOnlySpan<double> x)
    {
        if (!x.ContainsAnyExcept(0.0))
        {
            return new Score(double.PositiveInfinity, 0, _p.Preferred(x));
        }

        // The violation is piecewise smooth in w: its kinks and the preferred value are tried.
        int count = 0;
        _candidates[count++] = _p.Preferred(x);
        _candidates[count++] = 0;
        _candidates[count++] = _p.Source.FreeMaximum;
        for (int r = _p.FlatRows; r < _p.R; r++)
        {
            double sum = 0;
            for (int i = 0; i < _p.N; i++)
            {
                sum += x[i] * _p.NominalColumns[(i * _p.R) + r];
            }

            double w = r < _p.FlatRows + _p.LowerRows ? -sum : sum;
            if (w > 0 && w < _p.Source.FreeMaximum)
            {
                _candidates[count++] = w;
            }
        }

        double best = double.PositiveInfinity;
        double free = 0;
        for (int c = 0; c < count; c++)
        {
            double v = Violation(x, _candidates[c], default, default);
            if (v < best)
            {
                (best, free) = (v, _candidates[c]);
            }
        }

        if (best > 0)
        {
            return new Score(best, 0, free);
        }

        ShareAnswer share = _sweep.Judge(x);
        return new Score(0, share.Share, share.Free);
    }

    private double Violation(
        ReadOnlySpan<double> x,
        double w,
        Span<double> rows,
        Span<double> limits
    )
    {
        double total = 0;
        for (int r = 0; r < _p.R; r++)
        {
            double slope = _p.Slope(r);
            double sum = _p.NominalSlack[r] + (slope * w);
            double size = Math.Abs(slope * w);
            for (int i = 0; i < _p.N; i++)
            {
                double term = x[i] * _p.NominalColumns[(i * _p.R) + r];
                sum += term;
                size += Math.Abs(term);
            }

            double v = sum < 0 ? -sum / size : 0;
            total += v;
            if (rows.Length > 0)
            {
                rows[_p.RowOrder[r]] = v;
            }
        }

        for (int k = 0; k < _p.K; k++)
        {
            double sum = 0;
            for (int i = 0; i < _p.N; i++)
            {
                sum += x[i] * _p.Source.LimitCoefficients[(k * _p.N) + i];
            }

            double over = sum - _p.Limits[k];
            double v = over > 0 ? over / Math.Max(Math.Abs(_p.Source.Limits[k]), 1e-3 * over) : 0;
            total += v;
            if (limits.Length > 0)
            {
                limits[k] = v;
            }
        }

        return total;
    }

    /// <summary>Less violation first, then more share.</summary>
    [System.Runtime.InteropServices.StructLayout(System.Runtime.InteropServices.LayoutKind.Auto)]
    private readonly record struct Score(double Violation, double Share, double Free)
    {
        internal bool Better(Score other)
        {
            double width = 1e-12;
            if (Math.Abs(Violation - other.Violation) > width)
            {
                return Violation < other.Violation;
            }

            return Violation <= other.Violation + width && Share > other.Share;
        }
    }
}
