using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Recipes;

/// <summary>What to expect of a heap, by a stated simple rule.</summary>
/// <param name="Heats">Whether it will heat, in most cases.</param>
/// <param name="ChanceHot">The share of cases in which it heats well.</param>
/// <param name="Over65Likely">Whether the core likely passes 65 °C.</param>
/// <param name="AmmoniaLikely">Whether nitrogen will likely be smelt leaving.</param>
/// <param name="First55Day">Days to 55 °C; null unless it likely gets there.</param>
public sealed record Expectation(
    Heats Heats,
    double ChanceHot,
    bool Over65Likely,
    bool AmmoniaLikely,
    double? First55Day
)
{
    private const double FastRate = 0.40; // per day at the best temperature, in the first days
    private const double SlowRate = 0.02;
    private const double HeatOfMatter = 18.2e6; // J per kg rotted
    private const double LossCoefficient = 2.05; // W/m²K through the skin of a heap with the conductivity below
    private const double UsualConductivity = 0.33; // W/mK, 26 % of the volume water
    private const double ShareNotEvaporated = 0.6;
    private const double BestTemperature = 57;

    // The lignin rule leaves pure softwood next to no carbon, so that its traces of nitrogen would seem plenty.
    private const double LeastWithinReach = 1.0 / 3;

    /// <summary>
    /// The rule: heat made per litre at the best temperature (fast and slow matter at their rates, held back by too
    /// little or too much water, by want of air after settling and by want of nitrogen), against heat lost through
    /// the skin, which per litre grows as the heap gets smaller. The heat that its own air temperature lets it make
    /// decides whether it starts at all.
    /// </summary>
    /// <param name="mixture">The mixture as built, water included.</param>
    /// <param name="airTemperature">Mean air temperature, °C.</param>
    /// <returns>What to expect; Heats.No where the volume is not known.</returns>
    /// <remarks>
    /// Constants are estimates, set so that a vigorous cubic metre at 15 °C reaches 55 °C on day 2, equal barrows of
    /// coarse chips and fresh grass heat, chips alone do not, and a third of a cubic metre in 2 °C air does not start.
    /// </remarks>
    public static Expectation Of(Mixture mixture, double airTemperature)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        var peaks = mixture.Cases.Select(s => Potential(s, airTemperature)).ToArray();
        var hot = (double)peaks.Count(p => p.Peak >= 55 && p.Start >= 0.5) / peaks.Length;
        var warm = (double)peaks.Count(p => p.Peak >= 43 && p.Start >= 0.2) / peaks.Length;
        var heats =
            hot >= 0.5 ? Heats.Yes
            : warm >= 0.5 ? Heats.Modest
            : Heats.No;
        var typical = Potential(mixture.Typical, airTemperature);
        var ammonia = mixture.Chance(s =>
            s.CarbonNitrogenRatio < 20
            || s.AvailableCarbonNitrogenRatio < Aims.AvailableCarbonNitrogenFine.Low
        );
        return new Expectation(
            heats,
            hot,
            heats == Heats.Yes && (double)peaks.Count(p => p.Peak >= 75) / peaks.Length >= 0.5,
            ammonia >= 0.5,
            heats == Heats.Yes ? DaysTo55(typical.Start, airTemperature) : null
        );
    }

    /// <summary>The share of its best rate at which rotting goes at a temperature (cardinal temperatures 0, 57, 76 °C).</summary>
    /// <param name="temperature">°C.</param>
    /// <returns>0 to 1; 0 outside 0 to 76 °C.</returns>
    /// <remarks>Source: Rosso et al. 1993, cardinal temperature model with inflection (from memory).</remarks>
    public static double TemperatureFactor(double temperature)
    {
        const double Lowest = 0;
        const double Highest = 76;
        if (temperature <= Lowest || temperature >= Highest)
        {
            return 0;
        }

        var up = (temperature - Highest) * (temperature - Lowest) * (temperature - Lowest);
        var down =
            (BestTemperature - Lowest)
            * (
                ((BestTemperature - Lowest) * (temperature - BestTemperature))
                - ((BestTemperature - Highest) * (BestTemperature + Lowest - (2 * temperature)))
            );
        return Math.Clamp(up / down, 0, 1);
    }

    private static (double Peak, double Start) Potential(MixtureState state, double air)
    {
        var cubicMetres = state.SettledVolume / 1000;
        if (!(cubicMetres > 0))
        {
            return (air, 0);
        }

        var rotting = (FastRate * state.Matter.FastMatter) + (SlowRate * state.Matter.SlowMatter); // kg a day
        var watts = rotting * HeatOfMatter / 86400 * Held(state);
        var skin = 6 * Math.Pow(cubicMetres, 2.0 / 3); // m², a cube
        // A light heap keeps its heat better than a wet, dense one: 0.10 + 0.50 θ, and 0.10 for vapour.
        var conductivity = 0.2 + (0.5 * state.Matter.Water / state.SettledVolume);
        var lost = LossCoefficient * conductivity / UsualConductivity * skin;
        var rise = watts * ShareNotEvaporated / lost;
        var start = watts * TemperatureFactor(air) / (lost * 10);
        return (air + rise, start);
    }

    // Water: Haug 1993, 1/(1+exp(−17.684 M + 7.0622)) (from memory); air and nitrogen: straight lines, estimates.
    private static double Held(MixtureState state)
    {
        var moisture = state.Moisture / 100;
        var water = 1 / (1 + Math.Exp((-17.684 * moisture) + 7.0622));
        var air = Math.Clamp((state.FreeAirSpaceSettled - 12) / 20, 0, 1);
        var ratio = Math.Max(
            state.AvailableCarbonNitrogenRatio,
            state.CarbonNitrogenRatio * LeastWithinReach
        );
        var nitrogen = Math.Clamp(1.6 - (ratio / 50), 0.3, 1);
        return water * air * nitrogen;
    }

    private static double DaysTo55(double start, double air) =>
        // Two days at 15 °C, longer where the first heat is small; longer in the cold.
        Math.Clamp(
            2 * Math.Pow(2, (15 - air) / 9) * Math.Pow(Math.Max(start, 0.3) / 3.3, -0.35),
            1,
            21
        );
}
