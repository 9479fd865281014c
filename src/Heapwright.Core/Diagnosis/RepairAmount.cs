using Heapwright.Core.Quantities;

namespace Heapwright.Core.Diagnosis;

/// <summary>How much it takes to mend a heap that is too dry or too wet, by the balance of water (the moisture balance of the trade; common practice, no source for the squeezes).</summary>
/// <param name="Litres">Litres of water, or litres of loose dry leaves.</param>
public sealed record RepairAmount(Spread Litres)
{
    // Dry matter of a heap on its way, kg/m³; our estimate from loose and settled mixtures.
    private static readonly Spread DryMatter = Spread.Of(90, 130, 190);

    // Dry leaves: 15 % water, loose, 60 kg/m³ give or take a third; our estimate.
    private static readonly Spread LeafDryMatter = Spread.Of(35, 50, 80);
    private const double LeafMoisture = 15;
    private const double Sponge = 57; // % water of a mixture as damp as a wrung-out sponge
    private const double Drained = 62; // % water to which a wet heap is brought

    /// <summary>Water for a heap that is too dry; null where the squeeze says it is not.</summary>
    /// <param name="volume">The heap, m³.</param>
    /// <param name="squeeze">What a squeeze of the core does.</param>
    public static RepairAmount? Water(double volume, string squeeze)
    {
        double? moisture = squeeze switch
        {
            "dust" => 28,
            "dry" => 42,
            _ => null,
        };
        return moisture is { } now
            ? new RepairAmount(DryMatter.Times(volume * (Held(Sponge) - Held(now))))
            : null;
    }

    /// <summary>Dry leaves for a heap that is too wet; null where the squeeze says it is not.</summary>
    /// <param name="volume">The heap, m³.</param>
    /// <param name="squeeze">What a squeeze of the core does.</param>
    public static RepairAmount? DryLeaves(double volume, string squeeze)
    {
        double? moisture = squeeze switch
        {
            "drips" => 67,
            "streams" => 74,
            _ => null,
        };
        if (moisture is not { } now)
        {
            return null;
        }

        var takenByKilogram = Held(Drained) - Held(LeafMoisture);
        var part = volume * (Held(now) - Held(Drained)) / takenByKilogram * 1000;
        return new RepairAmount(
            Spread.Of(
                DryMatter.Low * part / LeafDryMatter.High,
                DryMatter.Typical * part / LeafDryMatter.Typical,
                DryMatter.High * part / LeafDryMatter.Low
            )
        );
    }

    // kg of water with a kg of dry matter.
    private static double Held(double moisture) => moisture / (100 - moisture);
}
