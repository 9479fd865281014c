using Heapwright.Core.Quantities;

namespace Heapwright.Core.Diagnosis;

/// <summary>How much it takes to mend a heap that is too dry or too wet, by the balance of water (the moisture balance of the trade; common practice, no source for the squeezes).</summary>
/// <param name="Litres">Litres of water, or litres of loose dry leaves.</param>
public sealed record RepairAmount(Spread Litres)
{
    // Dry matter of a heap on its way, kg/m³; our estimate from loose and settled mixtures.
    internal static readonly Spread DryMatter = Spread.Of(90, 130, 190);

    // Dry leaves: 15 % water, loose, 60 kg/m³ give or take a third; our estimate.
    private static readonly Spread LeafDryMatter = Spread.Of(35, 50, 80);
    private const double LeafMoisture = 15;
    private const double Sponge = 57; // % water of a mixture as damp as a wrung-out sponge
    internal const double Drained = 62; // % water to which a wet heap is brought

    /// <summary>Water for a heap that is too dry; null where the squeeze says it is not.</summary>
    /// <param name="volume">The heap, m³.</param>
    /// <param name="squeeze">What a squeeze of the core does.</param>
    public static RepairAmount? Water(Spread volume, string squeeze)
    {
        double? moisture = squeeze switch
        {
            "dust" => 28,
            "dry" => 42,
            _ => null,
        };
        return moisture is { } now
            ? new RepairAmount(DryMatterIn(volume).Times(Held(Sponge) - Held(now)))
            : null;
    }

    /// <summary>Dry leaves for a heap that is too wet; null where the squeeze says it is not.</summary>
    /// <param name="volume">The heap, m³.</param>
    /// <param name="squeeze">What a squeeze of the core does.</param>
    public static RepairAmount? DryLeaves(Spread volume, string squeeze)
    {
        if (WetMoisture(squeeze) is not { } now)
        {
            return null;
        }

        var takenByKilogram = Held(Drained) - Held(LeafMoisture);
        var part = (Held(now) - Held(Drained)) / takenByKilogram * 1000;
        var dry = DryMatterIn(volume);
        return new RepairAmount(
            Spread.Of(
                dry.Low * part / LeafDryMatter.High,
                dry.Typical * part / LeafDryMatter.Typical,
                dry.High * part / LeafDryMatter.Low
            )
        );
    }

    /// <summary>The moisture of a heap that is too wet, % of wet mass; null where the squeeze says it is not.</summary>
    /// <param name="squeeze">What a squeeze of the core does.</param>
    internal static double? WetMoisture(string squeeze) =>
        squeeze switch
        {
            "drips" => 67,
            "streams" => 74,
            _ => null,
        };

    // kg: two things that know nothing of each other, multiplied; their distances in logs add as squares.
    private static Spread DryMatterIn(Spread volume)
    {
        static double Both(double a, double b) =>
            Math.Exp(Math.Sqrt(Math.Pow(Math.Log(a), 2) + Math.Pow(Math.Log(b), 2)));
        if (volume.IsExact)
        {
            return DryMatter.Times(volume.Typical);
        }

        var typical = DryMatter.Typical * volume.Typical;
        return Spread.Of(
            typical / Both(DryMatter.Typical / DryMatter.Low, volume.Typical / volume.Low),
            typical,
            typical * Both(DryMatter.High / DryMatter.Typical, volume.High / volume.Typical)
        );
    }

    // kg of water with a kg of dry matter.
    internal static double Held(double moisture) => moisture / (100 - moisture);
}
