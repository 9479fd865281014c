using System.Collections.Immutable;
using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Recipes;

/// <summary>A heap that stands already: what went in, how long ago, and its volume now.</summary>
/// <param name="Volume">Litres now.</param>
/// <param name="AgeDays">Days since it was built.</param>
/// <param name="CoreTemperature">°C now; null if not known.</param>
/// <param name="Ingredients">What went in.</param>
public sealed record StandingHeap(
    double Volume,
    double AgeDays,
    double? CoreTemperature,
    ImmutableArray<Ingredient> Ingredients
)
{
    /// <summary>Rate at which fast matter rots in a working heap, per day.</summary>
    /// <remarks>An estimate, half the rate at the best temperature, since not all of a heap is hot.</remarks>
    public const double FastRate = 0.1;

    /// <summary>Rate at which slow matter rots in a working heap, per day; an estimate as above.</summary>
    public const double SlowRate = 0.01;

    /// <summary>kg of carbon in a kg of rotted matter.</summary>
    private const double CarbonPerMatter = 0.477;

    /// <summary>Share of the nitrogen of rotted matter that is lost to the air.</summary>
    /// <remarks>Within the 20 to 60 % of the whole that is quoted for manures (from memory).</remarks>
    private const double NitrogenLost = 0.3;

    /// <summary>What is left of a balance after the heap's age: fast and slow matter rot away exponentially.</summary>
    /// <param name="fresh">What went in.</param>
    public MassBalance Aged(MassBalance fresh)
    {
        var fastLost = fresh.FastMatter * (1 - Math.Exp(-FastRate * AgeDays));
        var slowLost = fresh.SlowMatter * (1 - Math.Exp(-SlowRate * AgeDays));
        var lost = fastLost + slowLost;
        var dry = fresh.DryMass - lost;
        var carbonLost = Math.Min(fresh.Carbon, lost * CarbonPerMatter);
        var availableLost = Math.Min(fresh.AvailableCarbon, carbonLost);
        var nitrogenLost = fresh.Nitrogen * NitrogenLost * lost / Math.Max(fresh.DryMass, 1e-12);
        return fresh with
        {
            // Moisture is taken to have stayed: what rots makes water, and heat carries it off.
            WetMass = dry * fresh.WetMass / Math.Max(fresh.DryMass, 1e-12),
            DryMass = dry,
            Carbon = fresh.Carbon - carbonLost,
            AvailableCarbon = fresh.AvailableCarbon - availableLost,
            Nitrogen = fresh.Nitrogen - nitrogenLost,
            FastMatter = fresh.FastMatter - fastLost,
            SlowMatter = fresh.SlowMatter - slowLost,
        };
    }
}
