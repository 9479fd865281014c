using Heapwright.Core.Materials;

namespace Heapwright.Core.Mixtures;

/// <summary>
/// What a quantity of matter holds, in kg and litres; balances add, and scale with the amount. NaN volumes mean that
/// the density is not known.
/// </summary>
/// <param name="WetMass">kg.</param>
/// <param name="DryMass">kg.</param>
/// <param name="Carbon">kg of organic carbon.</param>
/// <param name="AvailableCarbon">kg of carbon that is not held back by lignin.</param>
/// <param name="Nitrogen">kg.</param>
/// <param name="Ash">kg.</param>
/// <param name="Lignin">kg.</param>
/// <param name="Phosphorus">kg of P.</param>
/// <param name="Potassium">kg of K.</param>
/// <param name="FastMatter">kg that rots in the first hot days.</param>
/// <param name="SlowMatter">kg that rots over weeks.</param>
/// <param name="LooseVolume">Litres as tipped.</param>
/// <param name="StiffVolume">Litres of pieces stiff enough to hold air spaces.</param>
/// <param name="UnsupportedVolume">Litres left after two warm wet days with nothing stiff mixed in.</param>
public readonly record struct MassBalance(
    double WetMass,
    double DryMass,
    double Carbon,
    double AvailableCarbon,
    double Nitrogen,
    double Ash,
    double Lignin,
    double Phosphorus,
    double Potassium,
    double FastMatter,
    double SlowMatter,
    double LooseVolume,
    double StiffVolume,
    double UnsupportedVolume
)
{
    /// <summary>kg of water: what is wet and not dry.</summary>
    public double Water => WetMass - DryMass;

    /// <summary>The balance of one unit of a material.</summary>
    /// <param name="wetMass">kg of the unit; NaN if it follows from <paramref name="litres"/> and the density.</param>
    /// <param name="litres">Loose litres of the unit; NaN if it follows from the mass and the density.</param>
    /// <param name="value">Shape [property]: the value of each property in its unit; NaN where not known.</param>
    /// <returns>kg and litres per unit.</returns>
    public static MassBalance Of(double wetMass, double litres, ReadOnlySpan<double> value)
    {
        var density = value[(int)MaterialProperty.BulkDensity]; // kg/m³ = g/l
        var wet = double.IsNaN(wetMass) ? litres * density / 1000 : wetMass;
        var loose = double.IsNaN(litres) ? wetMass * 1000 / density : litres;
        var dry = wet * (100 - value[(int)MaterialProperty.Moisture]) / 100;
        var ash = value[(int)MaterialProperty.Ash];
        var lignin = value[(int)MaterialProperty.Lignin];
        var (fast, slow, _) = PoolShares.Split(value[(int)MaterialProperty.Fast], ash, lignin);
        var carbon = dry * value[(int)MaterialProperty.Carbon] / 100;
        return new MassBalance(
            wet,
            dry,
            carbon,
            carbon * BiodegradableShare(lignin, ash),
            dry * value[(int)MaterialProperty.Nitrogen] / 100,
            dry * ash / 100,
            dry * lignin / 100,
            dry * value[(int)MaterialProperty.Phosphorus] / 100,
            dry * value[(int)MaterialProperty.Potassium] / 100,
            dry * fast / 100,
            dry * slow / 100,
            loose,
            loose * value[(int)MaterialProperty.StiffShare] / 100,
            loose * value[(int)MaterialProperty.UnsupportedVolume] / 100
        );
    }

    /// <summary>The share of volatile solids, and so of carbon, that can rot: B = 0.83 − 0.028 X, never below 0.</summary>
    /// <param name="lignin">Lignin, % of dry mass.</param>
    /// <param name="ash">Ash, % of dry mass.</param>
    /// <returns>0 to 0.83; X is lignin in % of volatile solids.</returns>
    /// <remarks>Source: Chandler et al. 1980 (from memory).</remarks>
    public static double BiodegradableShare(double lignin, double ash)
    {
        var volatileSolids = 100 - ash;
        if (volatileSolids <= 0)
        {
            return 0;
        }

        return Math.Max(
            0,
            0.83 - (0.028 * 100 * Math.Min(lignin, volatileSolids) / volatileSolids)
        );
    }

    /// <summary>The sum of two balances.</summary>
    public static MassBalance operator +(MassBalance a, MassBalance b) =>
        new(
            a.WetMass + b.WetMass,
            a.DryMass + b.DryMass,
            a.Carbon + b.Carbon,
            a.AvailableCarbon + b.AvailableCarbon,
            a.Nitrogen + b.Nitrogen,
            a.Ash + b.Ash,
            a.Lignin + b.Lignin,
            a.Phosphorus + b.Phosphorus,
            a.Potassium + b.Potassium,
            a.FastMatter + b.FastMatter,
            a.SlowMatter + b.SlowMatter,
            a.LooseVolume + b.LooseVolume,
            a.StiffVolume + b.StiffVolume,
            a.UnsupportedVolume + b.UnsupportedVolume
        );

    /// <summary>A balance times an amount.</summary>
    public static MassBalance operator *(MassBalance a, double amount) =>
        new(
            a.WetMass * amount,
            a.DryMass * amount,
            a.Carbon * amount,
            a.AvailableCarbon * amount,
            a.Nitrogen * amount,
            a.Ash * amount,
            a.Lignin * amount,
            a.Phosphorus * amount,
            a.Potassium * amount,
            a.FastMatter * amount,
            a.SlowMatter * amount,
            a.LooseVolume * amount,
            a.StiffVolume * amount,
            a.UnsupportedVolume * amount
        );

    /// <summary>The balance with water added: 1 kg a litre, which adds nothing to the loose volume.</summary>
    /// <param name="litres">Litres of water, 0 or above.</param>
    public MassBalance WithWater(double litres) => this with { WetMass = WetMass + litres };
}
