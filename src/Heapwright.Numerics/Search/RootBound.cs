namespace Heapwright.Numerics.Search;

/// <summary>A value the objective can provably not go below, from the linear relaxation of the rows without scenarios.</summary>
internal static class RootBound
{
    /// <summary>Multipliers ≥ 0 of the forms, 0 for the cutoff, with which they bound the current objective best over the whole problem.</summary>
    internal static double[] Multipliers(PreparedProblem p, LinearForms forms)
    {
        int n = p.N;
        var program = new BoundedDualSimplex(n + 1, forms.Count);
        var right = new double[forms.Count];
        var matrix = new double[forms.Count * (n + 1)];
        var cost = new double[n + 1];
        for (int q = 0; q < forms.Count; q++)
        {
            // The cutoff stays an empty row: 0 ≥ 0.
            if (q != forms.Cutoff)
            {
                forms.Row(q)[..(n + 1)].CopyTo(matrix.AsSpan(q * (n + 1)));
                right[q] = -forms.Row(q)[n + 1];
            }
        }

        for (int i = 0; i < n; i++)
        {
            cost[i] = -forms.Row(forms.Cutoff)[i];
        }

        double[] low = [.. p.Source.Lower, 0];
        double[] high = [.. p.Source.Upper, p.Source.FreeMaximum];
        program.Load(cost, matrix, right, low, high);
        if (program.Solve() == false)
        {
            // A certificate that the forms contradict each other says nothing of the objective.
            Array.Clear(program.Y);
        }

        program.Y[forms.Cutoff] = 0;
        return program.Y;
    }

    /// <summary>The bound for objective <paramref name="o"/>; the cutoff form is left out.</summary>
    internal static double Of(PreparedProblem p, LinearForms forms, int o)
    {
        int n = p.N;
        int rows = forms.Count - 1;
        var program = new BoundedDualSimplex(n + 1, Math.Max(1, rows));
        var matrix = new double[rows * (n + 1)];
        var right = new double[rows];
        int k = 0;
        for (int q = 0; q < forms.Count; q++)
        {
            if (q == forms.Cutoff)
            {
                continue;
            }

            forms.Row(q)[..(n + 1)].CopyTo(matrix.AsSpan(k * (n + 1)));
            right[k++] = -forms.Row(q)[n + 1];
        }

        double[] cost = [.. p.Source.Objectives[o], 0];
        double[] low = [.. p.Source.Lower, 0];
        double[] high = [.. p.Source.Upper, p.Source.FreeMaximum];
        program.Load(cost, matrix, right, low, high);
        if (program.Solve() == false)
        {
            // Left to the search, which checks the certificate with allowance for rounding.
            Array.Clear(program.Y);
        }

        // Any multipliers y ≥ 0 bound: Σ y b + Σ min over the bounds of (c − yA)x.
        double bound = 0;
        for (int j = 0; j <= n; j++)
        {
            double d = cost[j];
            for (int r = 0; r < rows; r++)
            {
                d -= program.Y[r] * matrix[(r * (n + 1)) + j];
            }

            bound += Math.Min(d * low[j], d * high[j]);
        }

        for (int r = 0; r < rows; r++)
        {
            bound += program.Y[r] * right[r];
        }

        return bound - PreparedProblem.Width(bound);
    }
}
