using Heapwright.Core.Simulation;

namespace Heapwright.Core.Forecasts;

/// <summary>
/// What is in a heap in a handful of numbers that vary freely: logarithms of masses and ratios, logits of shares, each
/// less its mean and over its standard deviation among the members. What does not vary is left out.
/// </summary>
internal sealed class MatterFeatures
{
    private const double LeastShare = 1e-4;

    private static readonly Feature[] All =
    [
        new(m => Math.Log(m.Balance.DryMass), (m, v) => Dry(m, Math.Exp(v))),
        new(m => Math.Log(Math.Max(m.Balance.Water, 1e-9) / m.Balance.DryMass), WithWater),
        new(m => Logit(m.Balance.Ash / m.Balance.DryMass), WithAsh),
        new(m => Logit(m.Balance.FastMatter / m.Balance.DryMass), WithFast),
        new(m => Logit(m.Balance.SlowMatter / m.Balance.DryMass), WithSlow),
        new(m => Math.Log(Math.Max(m.Balance.Nitrogen, 1e-9) / m.Balance.DryMass), WithNitrogen),
        new(m => Math.Log(Math.Max(m.Balance.Carbon, 1e-9) / m.Balance.DryMass), WithCarbon),
        new(m => Math.Log(m.Filled / m.Balance.DryMass), WithFilled),
        new(
            m => Math.Log(m.Settling + 0.02),
            (m, v) => m with { Settling = Math.Max(0, Math.Exp(v) - 0.02) }
        ),
    ];

    private readonly (Feature Feature, double Mean, double Deviation)[] used;

    private MatterFeatures((Feature, double, double)[] used) => this.used = used;

    private readonly record struct Feature(
        Func<HeapMatter, double> Of,
        Func<HeapMatter, double, HeapMatter> Set
    );

    /// <summary>The features that vary among members.</summary>
    /// <param name="matter">Shape [member].</param>
    public static MatterFeatures Of(HeapMatter[] matter)
    {
        var varying = new List<(Feature, double, double)>();
        foreach (var feature in All)
        {
            var values = Array.ConvertAll(matter, m => feature.Of(m));
            var mean = values.Average();
            var deviation = Math.Sqrt(values.Average(v => (v - mean) * (v - mean)));
            if (deviation > 1e-6)
            {
                varying.Add((feature, mean, deviation));
            }
        }

        return new MatterFeatures([.. varying]);
    }

    /// <summary>Which of all features vary, in their order; the same number is the same feature in every heap.</summary>
    public IReadOnlyList<int> Varying =>
        [.. used.Select(u => Array.FindIndex(All, f => f.Of == u.Feature.Of))];

    /// <summary>The scores of members.</summary>
    /// <param name="matter">Shape [member].</param>
    /// <returns>Shape [feature][member].</returns>
    public IEnumerable<double[]> Scores(HeapMatter[] matter) =>
        used.Select(u => Array.ConvertAll(matter, m => (u.Feature.Of(m) - u.Mean) / u.Deviation));

    /// <summary>A member with the features that its scores say.</summary>
    /// <param name="matter">The member as the mixture gave it.</param>
    /// <param name="scores">Shape [feature][member], what follows is not read.</param>
    /// <param name="member">The member.</param>
    public HeapMatter At(HeapMatter matter, ReadOnlySpan<double[]> scores, int member)
    {
        for (var f = 0; f < used.Length; f++)
        {
            var (feature, mean, deviation) = used[f];
            matter = feature.Set(matter, mean + (deviation * scores[f][member]));
        }

        return matter;
    }

    /// <summary>A member with more or less in it.</summary>
    /// <param name="matter">The member.</param>
    /// <param name="dry">Factor on everything.</param>
    /// <param name="water">Factor on water over dry mass.</param>
    /// <param name="fast">Factor on the odds of fast matter.</param>
    public static HeapMatter Changed(HeapMatter matter, double dry, double water, double fast)
    {
        var b = matter.Balance;
        matter = WithFast(matter, Logit(b.FastMatter / b.DryMass) + Math.Log(fast));
        matter = WithWater(
            matter,
            Math.Log(Math.Max(matter.Balance.Water, 1e-9) * water / matter.Balance.DryMass)
        );
        return Dry(matter, matter.Balance.DryMass * dry);
    }

    private static HeapMatter Dry(HeapMatter m, double dry)
    {
        var factor = dry / m.Balance.DryMass;
        return m with { Balance = m.Balance * factor, Filled = m.Filled * factor };
    }

    private static HeapMatter WithWater(HeapMatter m, double logarithm) =>
        m with
        {
            Balance = m.Balance with { WetMass = m.Balance.DryMass * (1 + Math.Exp(logarithm)) },
        };

    private static HeapMatter WithAsh(HeapMatter m, double logit)
    {
        var b = m.Balance;
        var most = b.DryMass - b.FastMatter - b.SlowMatter;
        return m with
        {
            Balance = b with { Ash = Math.Min(b.DryMass * Share(logit), Math.Max(most, 0)) },
        };
    }

    private static HeapMatter WithFast(HeapMatter m, double logit)
    {
        var b = m.Balance;
        var most = b.DryMass - b.Ash - b.SlowMatter;
        return m with
        {
            Balance = b with { FastMatter = Math.Min(b.DryMass * Share(logit), Math.Max(most, 0)) },
        };
    }

    private static HeapMatter WithSlow(HeapMatter m, double logit)
    {
        var b = m.Balance;
        var most = b.DryMass - b.Ash - b.FastMatter;
        return m with
        {
            Balance = b with { SlowMatter = Math.Min(b.DryMass * Share(logit), Math.Max(most, 0)) },
        };
    }

    private static HeapMatter WithNitrogen(HeapMatter m, double logarithm) =>
        m with
        {
            Balance = m.Balance with { Nitrogen = m.Balance.DryMass * Math.Exp(logarithm) },
        };

    private static HeapMatter WithCarbon(HeapMatter m, double logarithm) =>
        m with
        {
            Balance = m.Balance with { Carbon = m.Balance.DryMass * Math.Exp(logarithm) },
        };

    private static HeapMatter WithFilled(HeapMatter m, double logarithm) =>
        m with
        {
            Filled = m.Balance.DryMass * Math.Exp(logarithm),
        };

    private static double Logit(double share)
    {
        var s = Math.Clamp(share, LeastShare, 1 - LeastShare);
        return Math.Log(s / (1 - s));
    }

    private static double Share(double logit) => 1 / (1 + Math.Exp(-logit));
}
