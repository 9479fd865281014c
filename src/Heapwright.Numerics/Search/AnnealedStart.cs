using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Search;

/// <summary>
/// Simulated annealing over whole amounts and the position of w between its nominal bounds. It proves nothing; its good
/// solution lets the proof that follows cut from the first node. Deterministic: fixed seed, fixed number of proposals.
/// </summary>
internal sealed unsafe class AnnealedStart
{
    private const double Hottest = 1;
    private const double Coldest = 0.02;

    /// <summary>What a relative violation of the rows without scenarios counts, in mean cost of a unit.</summary>
    private const double Violated = 40;

    /// <summary>Accepted moves after which the sums are formed anew, lest rounding adds up.</summary>
    private const int Fresh = 256;

    private readonly PreparedProblem _p;
    private readonly SingleRows _single;
    private readonly float[] _sums;
    private readonly double[] _nominal;
    private readonly double[] _limit;
    private readonly double[] _limitScale;
    private readonly double[] _rowScale;
    private readonly double[] _x;
    private readonly int[] _moving;
    private readonly double[] _step;
    private ulong _state;
    private double _theta;
    private double _missing;
    private int _moves;

    internal AnnealedStart(PreparedProblem p, SingleRows single)
    {
        _p = p;
        _single = single;
        _sums = new float[single.Stride];
        _nominal = new double[p.R];
        _limit = new double[p.K];
        _x = new double[p.N];
        _step = new double[p.N];
        _moving = [.. Enumerable.Range(0, p.N).Where(i => p.Source.Upper[i] > p.Source.Lower[i])];
        _limitScale = [.. p.Source.Limits.Select(u => 1 / Math.Max(Math.Abs(u), 1e-9))];
        _rowScale = new double[p.R];
        for (int r = 0; r < p.R; r++)
        {
            double sum = 1e-300;
            for (int i = 0; i < p.N; i++)
            {
                sum += Math.Abs(p.NominalColumns[(i * p.R) + r]) * p.Source.Upper[i];
            }

            // A few units of everything: about what a recipe holds.
            _rowScale[r] = 5 / sum;
        }
    }

    /// <summary>
    /// Anneals for objective <paramref name="o"/>; offers every proposal that looks feasible and better to <paramref name="offer"/>, which
    /// has to judge it exactly.
    /// </summary>
    /// <param name="o">The objective.</param>
    /// <param name="from">Where to begin, [variable].</param>
    /// <param name="seed">Seed of the proposals.</param>
    /// <param name="proposals">How many.</param>
    /// <param name="missing">What 1 % of the scenarios short counts, in mean cost of a unit.</param>
    /// <param name="offer">Takes amounts.</param>
    internal void Run(
        int o,
        ReadOnlySpan<double> from,
        ulong seed,
        int proposals,
        double missing,
        Action<double[]> offer
    )
    {
        _state = seed;
        _missing = missing * 100 / Math.Max(1, _p.S);
        double[] c = _p.Source.Objectives[o];
        double unit = Unit(c);
        from.CopyTo(_x);
        Reset();
        _theta = 0.5;
        double energy = Energy(c, unit, -1, 0, -1, 0, _theta, out bool ok);
        double bestSeen = double.PositiveInfinity;
        if (ok)
        {
            bestSeen = energy;
            offer(_x);
        }

        double cool = Math.Pow(Coldest / Hottest, 1.0 / Math.Max(1, proposals));
        double temperature = Hottest;
        for (int k = 0; k < proposals && _moving.Length > 0; k++, temperature *= cool)
        {
            int i = _moving[Next(_moving.Length)];
            int j = -1;
            double di = (Next(2) * 2) - 1;
            double dj = 0;
            double theta = _theta;
            int kind = Next(8);
            if (kind < 5 && _moving.Length > 1)
            {
                do
                {
                    j = _moving[Next(_moving.Length)];
                } while (j == i);

                dj = kind < 4 ? -di : di;
            }
            else if (kind == 7)
            {
                theta = Math.Clamp(theta + (0.4 * (Unit01() - 0.5)), 0, 1);
                di = Next(2) == 0 ? 0 : di;
            }

            if (!Inside(i, di) || (j >= 0 && !Inside(j, dj)))
            {
                continue;
            }

            double e = Energy(c, unit, i, di, j, dj, theta, out ok);
            if (e <= energy || Unit01() < Math.Exp((energy - e) / temperature))
            {
                energy = e;
                _theta = theta;
                Apply(i, di);
                if (j >= 0)
                {
                    Apply(j, dj);
                }

                if (++_moves % Fresh == 0)
                {
                    Reset();
                }

                if (ok && e < bestSeen)
                {
                    bestSeen = e;
                    offer(_x);
                }
            }
        }
    }

    private double Unit(double[] c)
    {
        double sum = 0;
        int count = 0;
        foreach (int i in _moving)
        {
            if (c[i] != 0)
            {
                sum += Math.Abs(c[i]);
                count++;
            }
        }

        return count == 0 ? 1 : sum / count;
    }

    private bool Inside(int i, double d) =>
        _x[i] + d >= _p.Source.Lower[i] && _x[i] + d <= _p.Source.Upper[i];

    private void Reset()
    {
        _single.Slack.CopyTo(_sums, 0);
        for (int i = 0; i < _p.N; i++)
        {
            AddColumn(i, _x[i]);
        }

        _p.NominalSlack.CopyTo(_nominal, 0);
        Array.Clear(_limit);
        for (int i = 0; i < _p.N; i++)
        {
            for (int r = 0; r < _p.R; r++)
            {
                _nominal[r] += _x[i] * _p.NominalColumns[(i * _p.R) + r];
            }

            for (int k = 0; k < _p.K; k++)
            {
                _limit[k] += _x[i] * _p.Source.LimitCoefficients[(k * _p.N) + i];
            }
        }
    }

    private void Apply(int i, double d)
    {
        if (d == 0)
        {
            return;
        }

        _x[i] += d;
        AddColumn(i, d);
        for (int r = 0; r < _p.R; r++)
        {
            _nominal[r] += d * _p.NominalColumns[(i * _p.R) + r];
        }

        for (int k = 0; k < _p.K; k++)
        {
            _limit[k] += d * _p.Source.LimitCoefficients[(k * _p.N) + i];
        }
    }

    private double Energy(
        double[] c,
        double unit,
        int i,
        double di,
        int j,
        double dj,
        double theta,
        out bool ok
    )
    {
        double cost = 0;
        for (int v = 0; v < _p.N; v++)
        {
            cost += c[v] * _x[v];
        }

        double violation = 0;
        for (int k = 0; k < _p.K; k++)
        {
            double sum = _limit[k];
            sum += i < 0 ? 0 : di * _p.Source.LimitCoefficients[(k * _p.N) + i];
            sum += j < 0 ? 0 : dj * _p.Source.LimitCoefficients[(k * _p.N) + j];
            violation += Math.Max(0, (sum - _p.Limits[k]) * _limitScale[k]);
        }

        cost += i < 0 ? 0 : di * c[i];
        cost += j < 0 ? 0 : dj * c[j];
        double low = 0;
        double high = _p.Source.FreeMaximum;
        double lowScale = 0;
        double highScale = 0;
        for (int r = 0; r < _p.R; r++)
        {
            double sum = _nominal[r];
            sum += i < 0 ? 0 : di * _p.NominalColumns[(i * _p.R) + r];
            sum += j < 0 ? 0 : dj * _p.NominalColumns[(j * _p.R) + r];
            if (r < _p.FlatRows)
            {
                violation += Math.Max(0, -sum * _rowScale[r]);
            }
            else if (r < _p.FlatRows + _p.LowerRows)
            {
                if (-sum > low)
                {
                    (low, lowScale) = (-sum, _rowScale[r]);
                }
            }
            else if (sum < high)
            {
                (high, highScale) = (sum, _rowScale[r]);
            }
        }

        if (low > high)
        {
            violation += (low - high) * Math.Max(lowScale, highScale);
        }

        double w = Math.Max(0, low + (theta * (high - low)));
        int held = Held(i, di, j, dj, w);
        int missing = Math.Max(0, _p.Need - held);
        ok = violation == 0 && missing == 0;
        return (cost / unit) + (_missing * missing) + (Violated * violation) + (ok ? 0 : 0.5);
    }

    private void AddColumn(int i, double d)
    {
        if (d == 0)
        {
            return;
        }

        var by = Vector512.Create((float)d);
        fixed (
            float* sums = _sums,
                column = &_single.Columns[i * _single.Stride]
        )
        {
            for (int k = 0; k < _single.Stride; k += 16)
            {
                Vector512
                    .FusedMultiplyAdd(by, Vector512.Load(column + k), Vector512.Load(sums + k))
                    .Store(sums + k);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private int Held(int i, double di, int j, double dj, double w)
    {
        int held = 0;
        int padded = _single.Padded;
        float* free = stackalloc float[_p.R];
        for (int r = 0; r < _p.R; r++)
        {
            free[r] = (float)(_single.Slope[r] * w);
        }

        fixed (
            float* sums = _sums,
                columns = _single.Columns
        )
        {
            float* a = columns + (Math.Max(i, 0) * _single.Stride);
            float* b = columns + (Math.Max(j, 0) * _single.Stride);
            var va = Vector512.Create(i < 0 ? 0 : (float)di);
            var vb = Vector512.Create(j < 0 ? 0 : (float)dj);
            for (int s = 0; s < padded; s += 16)
            {
                Vector512<float> least = Vector512.Create(float.MaxValue);
                for (int r = 0; r < _p.R; r++)
                {
                    int at = (r * padded) + s;
                    Vector512<float> f = Vector512.FusedMultiplyAdd(
                        va,
                        Vector512.Load(a + at),
                        Vector512.Load(sums + at)
                    );
                    f = Vector512.FusedMultiplyAdd(vb, Vector512.Load(b + at), f);
                    least = Vector512.MinNative(least, f + Vector512.Create(free[r]));
                }

                held += 16 - BitOperations.PopCount(Vector512.ExtractMostSignificantBits(least));
            }
        }

        // Padding lanes always hold.
        return held - (padded - _p.S);
    }

    private int Next(int below) => (int)(((UInt128)Bits() * (ulong)below) >> 64);

    private double Unit01() => (Bits() >> 11) * (1.0 / (1UL << 53));

    private ulong Bits()
    {
        _state += 0x9E3779B97F4A7C15;
        ulong z = _state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
