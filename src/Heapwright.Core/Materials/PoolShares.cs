using Heapwright.Core.Quantities;

namespace Heapwright.Core.Materials;

/// <summary>
/// How the organic matter of a material divides into what rots in the first hot days (fast), over weeks (slow) and
/// over months (lignin-rich), each in % of dry mass.
/// </summary>
/// <param name="Fast">Sugars, starch, protein, soft hemicellulose.</param>
/// <param name="Slow">Cellulose and the rest.</param>
/// <param name="LigninRich">Lignin with the cellulose it shields.</param>
public readonly record struct PoolShares(Spread Fast, Spread Slow, Spread LigninRich)
{
    /// <summary>kg of lignin-rich matter per kg of lignin: lignin shields nearly its own mass of cellulose.</summary>
    /// <remarks>An estimate; it gives 0.26 lignin-rich for the 14 % lignin of a mixed garden heap.</remarks>
    public const double LigninShield = 1.8;

    /// <summary>The shares by the stated rule: lignin-rich is 1.8 times lignin, slow is what is left.</summary>
    /// <param name="properties">Fast share, ash and lignin must be known.</param>
    /// <returns>The three shares, or null where one of the three properties is missing.</returns>
    public static PoolShares? Of(MaterialProperties properties)
    {
        ArgumentNullException.ThrowIfNull(properties);
        if (
            properties[MaterialProperty.Fast] is not { } fast
            || properties[MaterialProperty.Ash] is not { } ash
            || properties[MaterialProperty.Lignin] is not { } lignin
        )
        {
            return null;
        }

        var low = Split(fast.Low, ash.High, lignin.High);
        var typical = Split(fast.Typical, ash.Typical, lignin.Typical);
        var high = Split(fast.High, ash.Low, lignin.Low);
        return new PoolShares(
            Ordered(low.Fast, typical.Fast, high.Fast),
            Ordered(low.Slow, typical.Slow, high.Slow),
            Ordered(low.LigninRich, typical.LigninRich, high.LigninRich)
        );
    }

    /// <summary>The split for one set of values, all in % of dry mass; the three and the ash add up to 100.</summary>
    /// <param name="fast">Fast matter.</param>
    /// <param name="ash">Ash.</param>
    /// <param name="lignin">Lignin.</param>
    public static (double Fast, double Slow, double LigninRich) Split(
        double fast,
        double ash,
        double lignin
    )
    {
        var volatileSolids = Math.Max(0, 100 - ash);
        var quick = Math.Min(fast, volatileSolids);
        var tough = Math.Min(LigninShield * lignin, volatileSolids - quick);
        return (quick, volatileSolids - quick - tough, tough);
    }

    // The middle case stays the typical value: the ends are widened to hold it, never moved past it.
    private static Spread Ordered(double a, double b, double c) =>
        Spread.Of(Math.Min(Math.Min(a, b), c), b, Math.Max(Math.Max(a, b), c));
}
