namespace Heapwright.Numerics.Search;

/// <summary>
/// The scenario rows in single precision for the bounds of the tree: every row divided by the largest magnitude it can take
/// and multiplied by <see cref="Size"/>, scenarios contiguous and padded to whole vectors with lanes that never fail; and once more
/// scenario by scenario, as the small linear programs want them.
/// </summary>
internal sealed class SingleRows
{
    /// <summary>The largest magnitude of a row after scaling.</summary>
    internal const float Size = 64;

    private const int Lanes = 16;

    /// <summary>Slack of the padding lanes: they hold whatever the amounts.</summary>
    private const float PaddingSlack = 1e30f;

    internal SingleRows(PreparedProblem p)
    {
        Padded = (p.S + Lanes - 1) / Lanes * Lanes;
        Stride = p.R * Padded;

        // Without rows there is still an address to take.
        Columns = new float[Math.Max(1, p.N * Stride)];
        Slack = new float[Stride];
        ProgramStride = (p.N + 2 + Lanes - 1) / Lanes * Lanes;
        ByScenario = new float[p.S * p.R * ProgramStride];
        RightByScenario = new float[p.S * p.R];
        Scale = new double[p.R];
        Slope = new double[p.R];
        for (int r = 0; r < p.R; r++)
        {
            double magnitude = Magnitude(p, r);
            Scale[r] = magnitude > 0 ? Size / magnitude : 1;
            Slope[r] = p.Slope(r) * Scale[r];
            Fill(p, r);
        }
    }

    /// <summary>Scenarios rounded up to whole vectors.</summary>
    internal int Padded { get; }

    /// <summary>Floats per variable in <see cref="Columns"/>.</summary>
    internal int Stride { get; }

    /// <summary>Scaled coefficients, [variable, row, scenario].</summary>
    internal float[] Columns { get; }

    /// <summary>Scaled slack, [row, scenario].</summary>
    internal float[] Slack { get; }

    /// <summary>Floats per row in <see cref="ByScenario"/>.</summary>
    internal int ProgramStride { get; }

    /// <summary>Scaled coefficients and the slope in w, [scenario, row, variable…, w, margin], padding 0.</summary>
    internal float[] ByScenario { get; }

    /// <summary>Minus the scaled slack, [scenario, row].</summary>
    internal float[] RightByScenario { get; }

    /// <summary>What each sorted row of the prepared problem is multiplied by, [row].</summary>
    internal double[] Scale { get; }

    /// <summary>Scaled slope in w, [row].</summary>
    internal double[] Slope { get; }

    /// <summary>Sets the coefficient of the margin variable, the one after w, in row <paramref name="r"/> of all scenarios.</summary>
    internal void SetMargin(int r, int variables, float sigma)
    {
        int rows = Scale.Length;
        for (int row = r; row < RightByScenario.Length; row += rows)
        {
            ByScenario[(row * ProgramStride) + variables + 1] = sigma;
        }
    }

    private static double Magnitude(PreparedProblem p, int r)
    {
        double most = 0;
        for (int s = 0; s < p.S; s++)
        {
            double sum =
                (Math.Abs(p.Slope(r)) * p.Source.FreeMaximum) + p.Slack[(r * p.Padded) + s];
            for (int i = 0; i < p.N; i++)
            {
                sum += Math.Abs(p.Columns[(i * p.Stride) + (r * p.Padded) + s]) * p.Source.Upper[i];
            }

            most = Math.Max(most, sum);
        }

        return most;
    }

    private void Fill(PreparedProblem p, int r)
    {
        Slack.AsSpan((r * Padded) + p.S, Padded - p.S).Fill(PaddingSlack);
        for (int s = 0; s < p.S; s++)
        {
            float slack = (float)(p.Slack[(r * p.Padded) + s] * Scale[r]);
            Slack[(r * Padded) + s] = slack;
            RightByScenario[(s * p.R) + r] = -slack;
            int row = ((s * p.R) + r) * ProgramStride;
            for (int i = 0; i < p.N; i++)
            {
                float a = (float)(p.Columns[(i * p.Stride) + (r * p.Padded) + s] * Scale[r]);
                Columns[(i * Stride) + (r * Padded) + s] = a;
                ByScenario[row + i] = a;
            }

            ByScenario[row + p.N] = (float)Slope[r];
        }
    }
}
