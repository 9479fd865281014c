using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>The heap at its start at every point of the sample set: what was measured before what the recipe says.</summary>
public sealed record StartMatter
{
    private const double Least = 1e-3; // % of dry mass

    /// <summary>kg as built.</summary>
    public Sampled? WetMass { get; init; }

    /// <summary>kg of dry matter.</summary>
    public Sampled? DryMass { get; init; }

    /// <summary>Litres as built.</summary>
    public Sampled? Volume { get; init; }

    /// <summary>% of dry mass.</summary>
    public Sampled? Ash { get; init; }

    /// <summary>% of dry mass.</summary>
    public Sampled? Carbon { get; init; }

    /// <summary>% of dry mass.</summary>
    public Sampled? Nitrogen { get; init; }

    /// <summary>P, % of dry mass.</summary>
    public Sampled? Phosphorus { get; init; }

    /// <summary>K, % of dry mass.</summary>
    public Sampled? Potassium { get; init; }

    /// <summary>Draws a heap at its start.</summary>
    /// <param name="given">What was measured.</param>
    /// <param name="mixture">What went in; null where it is not known.</param>
    /// <param name="points">The sample set of the question.</param>
    public static StartMatter Of(MatterGiven given, Mixture? mixture, SamplePoints points)
    {
        ArgumentNullException.ThrowIfNull(given);
        ArgumentNullException.ThrowIfNull(points);
        Sampled? Draw(string name, Spread? value, SpreadScale scale) =>
            value is { } v ? new(points.Draw("start " + name, v, scale), Origin.Measured) : null;
        Sampled? Percent(string name, Spread? value) => Draw(name, value, SpreadScale.Percent);
        Sampled? Amount(string name, Spread? value) => Draw(name, value, SpreadScale.Positive);

        var moisture = Percent("moisture", given.Moisture);
        var volume = Amount("volume", given.Volume) ?? FromMixture(mixture, s => s.FilledVolume);
        var wet =
            Amount("wet mass", given.WetMass)
            ?? (
                Amount("density", given.BulkDensity) is { } density
                    ? volume?.With(density, (v, d) => v * d / 1000)
                    : null
            );
        var dry = Amount("dry mass", given.DryMass);
        if (moisture is not null)
        {
            dry ??= wet?.With(moisture, (w, m) => w * (100 - m) / 100);
            wet ??= dry?.With(moisture, (d, m) => 100 * d / (100 - m));
        }

        var nitrogen = Percent("nitrogen", given.Nitrogen);
        var carbon = Percent("carbon", given.Carbon);
        if (Amount("ratio", given.Ratio) is { } ratio)
        {
            nitrogen ??= carbon?.With(ratio, (c, r) => c / r);
            carbon ??= nitrogen?.With(ratio, (n, r) => Math.Min(100, n * r));
        }

        return new StartMatter
        {
            WetMass = wet ?? FromMixture(mixture, s => s.Matter.WetMass),
            DryMass = dry ?? FromMixture(mixture, s => s.Matter.DryMass),
            Volume = volume,
            Ash = Percent("ash", given.Ash) ?? Some(mixture, m => m.Ash),
            Carbon = carbon ?? Some(mixture, m => m.Carbon),
            Nitrogen = nitrogen ?? Some(mixture, m => m.Nitrogen),
            Phosphorus =
                Percent("phosphorus", given.Phosphorus) ?? Share(mixture, m => m.Phosphorus),
            Potassium = Percent("potassium", given.Potassium) ?? Share(mixture, m => m.Potassium),
        };
    }

    private static Sampled? Share(Mixture? mixture, Func<MassBalance, double> part) =>
        FromMixture(mixture, s => 100 * part(s.Matter) / s.Matter.DryMass);

    // What is not there cannot be followed through the heap.
    private static Sampled? Some(Mixture? mixture, Func<MassBalance, double> part) =>
        Share(mixture, part) is { } share && share.Cases.All(c => c > Least) ? share : null;

    private static Sampled? FromMixture(Mixture? mixture, Func<MixtureState, double> quantity)
    {
        if (mixture is null)
        {
            return null;
        }

        // A mixture that is known exactly has one case for all points.
        var cases = new double[SamplePoints.Count];
        for (var i = 0; i < cases.Length; i++)
        {
            cases[i] = quantity(mixture.Cases[i % mixture.Cases.Count]);
            if (!double.IsFinite(cases[i]))
            {
                return null;
            }
        }

        return new Sampled(cases, Origin.Recipe);
    }
}
