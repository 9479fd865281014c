using System.Collections.Frozen;
using UnitsNet;

namespace Heapwright.Core.Amounts;

/// <summary>The units of mass and volume that an amount may have; containers are units of their own.</summary>
public static class MeasureUnits
{
    private static readonly FrozenDictionary<string, double> KilogramsPer = new Dictionary<
        string,
        double
    >(StringComparer.Ordinal)
    {
        ["g"] = Mass.FromGrams(1).Kilograms,
        ["kg"] = 1,
        ["t"] = Mass.FromTonnes(1).Kilograms,
        ["oz"] = Mass.FromOunces(1).Kilograms,
        ["lb"] = Mass.FromPounds(1).Kilograms,
        ["ton_us"] = Mass.FromShortTons(1).Kilograms,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, double> LitresPer = new Dictionary<
        string,
        double
    >(StringComparer.Ordinal)
    {
        ["ml"] = Volume.FromMilliliters(1).Liters,
        ["l"] = 1,
        ["gal_us"] = Volume.FromUsGallons(1).Liters,
        ["gal_uk"] = Volume.FromImperialGallons(1).Liters,
        ["ft3"] = Volume.FromCubicFeet(1).Liters,
        // 27 cubic feet exactly; the library's own factor for the yard is rounded.
        ["yd3"] = 27 * Volume.FromCubicFeet(1).Liters,
        ["m3"] = 1000,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The names of all units of mass and volume.</summary>
    public static IReadOnlyList<string> Names { get; } =
    ["g", "kg", "t", "oz", "lb", "ton_us", "ml", "l", "gal_us", "gal_uk", "ft3", "yd3", "m3"];

    /// <summary>One of the unit, exactly; null if it is no unit of mass or volume.</summary>
    /// <param name="unit">A name such as <c>kg</c> or <c>yd3</c>.</param>
    public static UnitSize? Find(string unit)
    {
        if (KilogramsPer.TryGetValue(unit, out var kg))
        {
            return UnitSize.OfMass(unit, Quantities.Spread.Exact(kg), wholeByDefault: false);
        }

        return LitresPer.TryGetValue(unit, out var l)
            ? UnitSize.OfVolume(unit, Quantities.Spread.Exact(l), wholeByDefault: false)
            : null;
    }
}
