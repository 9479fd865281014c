namespace Heapwright.Numerics.Search;

/// <summary>
/// The rows without scenarios as linear forms f(x, w) = Σ αᵢxᵢ + δw + κ ≥ 0: limits, earlier objectives, the cutoff on the
/// current objective, and the nominal rows. Row-major, [form, variable…, w, constant].
/// </summary>
internal sealed class LinearForms
{
    internal LinearForms(PreparedProblem p, int objective, ReadOnlySpan<double> kept)
    {
        N = p.N;
        Width = N + 2;
        Cutoff = p.K + objective;
        FirstNominal = Cutoff + 1;
        Count = FirstNominal + p.R;
        Values = new double[Count * Width];
        for (int k = 0; k < p.K; k++)
        {
            for (int i = 0; i < N; i++)
            {
                Row(k)[i] = -p.Source.LimitCoefficients[(k * N) + i];
            }

            Row(k)[N + 1] = p.Limits[k];
        }

        for (int o = 0; o <= objective; o++)
        {
            Span<double> row = Row(p.K + o);
            for (int i = 0; i < N; i++)
            {
                row[i] = -p.Source.Objectives[o][i];
            }

            row[N + 1] = o < objective ? kept[o] + PreparedProblem.Width(kept[o]) : 0;
        }

        for (int r = 0; r < p.R; r++)
        {
            Span<double> row = Row(FirstNominal + r);
            for (int i = 0; i < N; i++)
            {
                row[i] = p.NominalColumns[(i * p.R) + r];
            }

            row[N] = p.Slope(r);
            row[N + 1] = p.NominalSlack[r];
        }

        (PairA, PairB) = Pairs(p);
    }

    /// <summary>Number of variables.</summary>
    internal int N { get; }

    /// <summary>Doubles per form: N + 2.</summary>
    internal int Width { get; }

    /// <summary>Number of forms.</summary>
    internal int Count { get; }

    /// <summary>The form that says: better than the incumbent.</summary>
    internal int Cutoff { get; }

    /// <summary>Place of the first nominal row.</summary>
    internal int FirstNominal { get; }

    /// <summary>All forms, [form, variable…, w, constant].</summary>
    internal double[] Values { get; }

    /// <summary>Two opposed nominal forms without w whose cone is worth slicing; First = −1 if there are none.</summary>
    internal (int First, int Second) PairA { get; }

    /// <summary>A lower and an upper bound on w whose cone is worth slicing; First = −1 if there are none.</summary>
    internal (int First, int Second) PairB { get; }

    internal Span<double> Row(int form) => Values.AsSpan(form * Width, Width);

    /// <summary>
    /// Replaces the forms p, q ≥ 0 of a pair by (1−t₀)p − t₀q ≥ 0 and t₁q − (1−t₁)p ≥ 0: the slice of their cone between t₀ and t₁.
    /// The slices of a partition cover the cone, so searching each of them searches everything.
    /// </summary>
    internal void Slice((int First, int Second) pair, double t0, double t1, Span<double> into)
    {
        Span<double> first = into.Slice(pair.First * Width, Width);
        Span<double> second = into.Slice(pair.Second * Width, Width);
        ReadOnlySpan<double> p = Row(pair.First);
        ReadOnlySpan<double> q = Row(pair.Second);
        for (int i = 0; i < Width; i++)
        {
            first[i] = ((1 - t0) * p[i]) - (t0 * q[i]);
            second[i] = (t1 * q[i]) - ((1 - t1) * p[i]);
        }
    }

    private ((int First, int Second) A, (int First, int Second) B) Pairs(PreparedProblem p)
    {
        (int First, int Second) a = (-1, -1);
        double most = -0.2;
        for (int r = 0; r < p.FlatRows; r++)
        {
            for (int s = r + 1; s < p.FlatRows; s++)
            {
                double c = Cosine(p, r, s);
                if (c < most)
                {
                    (most, a) = (c, (FirstNominal + r, FirstNominal + s));
                }
            }
        }

        (int First, int Second) b = (-1, -1);
        most = double.PositiveInfinity;
        for (int r = p.FlatRows; r < p.FlatRows + p.LowerRows; r++)
        {
            for (int s = p.FlatRows + p.LowerRows; s < p.R; s++)
            {
                double c = Cosine(p, r, s);
                if (c < most)
                {
                    (most, b) = (c, (FirstNominal + r, FirstNominal + s));
                }
            }
        }

        return (a, b);
    }

    /// <summary>Cosine of the angle between two nominal rows, amounts weighed by their upper bounds.</summary>
    private static double Cosine(PreparedProblem p, int r, int s)
    {
        double dot = 0;
        double rr = 1e-300;
        double ss = 1e-300;
        for (int i = 0; i < p.N; i++)
        {
            double weight = p.Source.Upper[i] * p.Source.Upper[i];
            double a = p.NominalColumns[(i * p.R) + r];
            double b = p.NominalColumns[(i * p.R) + s];
            dot += weight * a * b;
            rr += weight * a * a;
            ss += weight * b * b;
        }

        return dot / Math.Sqrt(rr * ss);
    }
}
