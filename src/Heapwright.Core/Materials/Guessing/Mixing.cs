using Heapwright.Core.Quantities;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Materials.Guessing;

/// <summary>One distribution made of many: each material's own, widened, in its share.</summary>
internal sealed class Mixing
{
    // Every material's own range is taken this much wider, since the next unknown stuff is none of those in the library.
    // Set so that, one whole family left out at a time, the 90 % ranges hold 85 to 95 % of what was left out.
    public const double Widening = 1.1;
    private const int Cells = 250;

    private readonly double[] edges;
    private readonly double[] mass;

    private Mixing(double[] edges, double[] mass)
    {
        this.edges = edges;
        this.mass = mass;
    }

    /// <summary>How likely the evidence is under one distribution: the mean of the likelihood over it.</summary>
    /// <param name="value">The distribution.</param>
    /// <param name="property">The property it belongs to.</param>
    /// <param name="likelihood">The likelihood by value.</param>
    public static double MeanLikelihood(
        Spread value,
        MaterialProperty property,
        Func<double, double> likelihood
    )
    {
        const int Points = 64;
        var scale = PropertyFacts.Scale(property);
        var sum = 0.0;
        for (var i = 0; i < Points; i++)
        {
            var z = Widening * NormalDistribution.Quantile((i + 0.5) / Points);
            sum += likelihood(Math.Max(value.AtScore(z, scale), 1e-9));
        }

        return sum / Points;
    }

    /// <summary>The mixture over the range allowed for the property.</summary>
    /// <param name="parts">The distributions with their weights, at least one of a positive weight.</param>
    /// <param name="property">The property.</param>
    /// <param name="likelihood">The likelihood by value, or null.</param>
    public static Mixing Of(
        IReadOnlyList<(Spread Value, double Weight)> parts,
        MaterialProperty property,
        Func<double, double>? likelihood
    )
    {
        var scale = PropertyFacts.Scale(property);
        var cells = Edges(property, parts);
        var masses = new double[Cells];
        var scores = new double[Cells + 1];
        foreach (var (value, weight) in parts)
        {
            value.ScoresOf(cells, scale, scores);
            var below = 0.0;
            for (var i = 0; i < Cells; i++)
            {
                var upTo =
                    i == Cells - 1 ? 1 : NormalDistribution.Cumulative(scores[i + 1] / Widening);
                masses[i] += weight * (upTo - below);
                below = upTo;
            }
        }

        if (likelihood is not null)
        {
            for (var i = 0; i < Cells; i++)
            {
                masses[i] *= likelihood(Math.Max((cells[i] + cells[i + 1]) / 2, 1e-9));
            }
        }

        return new Mixing(cells, masses);
    }

    /// <summary>The 5th, 50th and 95th percentile.</summary>
    public Spread Percentiles()
    {
        var total = mass.Sum();
        return Spread.Of(At(0.05 * total), At(0.5 * total), At(0.95 * total));
    }

    private double At(double target)
    {
        var below = 0.0;
        for (var i = 0; i < Cells; i++)
        {
            if (below + mass[i] >= target && mass[i] > 0)
            {
                // The outer cells also hold all that lies beyond: a share that is often 0 stays 0.
                if (i is 0 or Cells - 1)
                {
                    return i == 0 ? edges[0] : edges[^1];
                }

                var within = Math.Clamp((target - below) / mass[i], 0, 1);
                return edges[i] + (within * (edges[i + 1] - edges[i]));
            }

            below += mass[i];
        }

        return edges[^1];
    }

    // Cells of equal width on the logarithmic scale where it serves, else on the plain one.
    private static double[] Edges(
        MaterialProperty property,
        IReadOnlyList<(Spread Value, double Weight)> parts
    )
    {
        var scale = PropertyFacts.Scale(property);
        var (lowest, highest) = PropertyFacts.Allowed(property);
        var least = parts.Min(p => p.Value.AtScore(-4 * Widening, scale));
        var most = parts.Max(p => p.Value.AtScore(4 * Widening, scale));
        least = Math.Clamp(least, lowest, highest);
        most = Math.Clamp(most, lowest, highest);
        var cells = new double[Cells + 1];
        var logarithmic = least > 0 && scale == SpreadScale.Positive;
        for (var i = 0; i <= Cells; i++)
        {
            var share = (double)i / Cells;
            cells[i] = logarithmic
                ? least * Math.Pow(most / least, share)
                : least + (share * (most - least));
        }

        return cells;
    }
}
