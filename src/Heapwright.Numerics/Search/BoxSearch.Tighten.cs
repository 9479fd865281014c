namespace Heapwright.Numerics.Search;

/// <content>Bounds of amounts that the forms imply in a box.</content>
internal sealed unsafe partial class BoxSearch
{
    private const int MostRounds = 3;

    /// <summary>Share of the magnitude of a form's terms that rounding to double precision may cost.</summary>
    private const double Rounding = 1e-13;

    /// <summary>Steps closer to the next whole number than this count as it.</summary>
    private const double WholeEdge = 1e-6;

    private readonly double[] _surrogate;
    private readonly double[] _multipliers;
    private double _surrogateMagnitude;

    /// <summary>
    /// Raises lower and lowers upper bounds as far as the forms, and their sum that bounds the objective best at the root, demand in
    /// the box; false if the box turns out to be empty.
    /// </summary>
    private bool Tighten(BoxNode node)
    {
        int width = _forms.Width;
        bool changed = true;
        for (int round = 0; changed && round < MostRounds; round++)
        {
            changed = false;
            for (int q = 0; q <= _forms.Count; q++)
            {
                bool own = q < _forms.Count;
                double[] from = own ? node.Forms : _surrogate;
                fixed (double* form = &from[own ? q * width : 0])
                {
                    if (
                        !Tighten(node, form, own ? _magnitude[q] : _surrogateMagnitude, ref changed)
                    )
                    {
                        return false;
                    }
                }
            }
        }

        return node.Lost <= _mayFail;
    }

    private bool Tighten(BoxNode node, double* form, double magnitude, ref bool changed)
    {
        int n = _p.N;
        double most = form[n + 1] + (Rounding * magnitude);
        most += Math.Max(0, form[n]) * _p.Source.FreeMaximum;
        fixed (
            double* low = node.Low,
                high = node.High
        )
        {
            for (int i = 0; i < n; i++)
            {
                most += form[i] > 0 ? form[i] * high[i] : form[i] * low[i];
            }

            if (most < 0)
            {
                return false;
            }

            for (int i = 0; i < n; i++)
            {
                double a = form[i];
                double range = high[i] - low[i];
                if (range == 0 || Math.Abs(a) * range <= most)
                {
                    continue;
                }

                // The rest at its best leaves this much for the amount to move from its own best end.
                double steps = Math.Floor((most / Math.Abs(a)) + WholeEdge);
                if (steps >= range)
                {
                    continue;
                }

                changed = true;
                Shrink(node, i, a > 0 ? high[i] - steps : low[i], a > 0 ? high[i] : low[i] + steps);
            }
        }

        return true;
    }

    /// <summary>Narrows a box in place, with its bounds.</summary>
    private void Shrink(BoxNode node, int i, double low, double high)
    {
        Narrow(node, node, i, low, high);
        for (int k = node.Witnesses - 1; k >= 0; k--)
        {
            float at = node.Witness[k][i];
            if (at < low - 1e-5 || at > high + 1e-5)
            {
                DropWitness(node, k);
            }
        }
    }

    /// <summary>The form that says what is left between the root's bound of the objective and the cutoff; all 0 if there is none.</summary>
    private void SetSurrogate(double cutoff)
    {
        int n = _p.N;
        ReadOnlySpan<double> objective = _forms.Row(_forms.Cutoff);
        objective.CopyTo(_surrogate);
        _surrogate[n + 1] = cutoff;
        _surrogateMagnitude = _magnitude[_forms.Cutoff];
        for (int q = 0; q < _forms.Count; q++)
        {
            double y = _multipliers[q];
            if (y == 0 || q == _forms.Cutoff)
            {
                continue;
            }

            _surrogateMagnitude += y * _magnitude[q];
            ReadOnlySpan<double> row = _forms.Row(q);
            for (int i = 0; i < row.Length; i++)
            {
                _surrogate[i] += y * row[i];
            }
        }
    }
}
