using Heapwright.Core.Quantities;

namespace Heapwright.Core.Amounts;

/// <summary>
/// The units of mass and volume that an amount may have; containers are units of their own. All sizes are exact by
/// definition (pound 0.45359237 kg, US gallon 231 in³, UK gallon 4.54609 l, foot 0.3048 m); a test holds them against
/// UnitsNet, which is too slow to start for the first thing every question needs.
/// </summary>
public static class MeasureUnits
{
    private const double Pound = 0.45359237;
    private const double CubicFoot = 28.316846592;

    private static readonly (string Name, bool IsMass, double Size)[] Units =
    [
        ("g", true, 0.001),
        ("kg", true, 1),
        ("t", true, 1000),
        ("oz", true, Pound / 16),
        ("lb", true, Pound),
        ("ton_us", true, 2000 * Pound),
        ("ml", false, 0.001),
        ("l", false, 1),
        ("gal_us", false, 3.785411784),
        ("gal_uk", false, 4.54609),
        ("ft3", false, CubicFoot),
        ("yd3", false, 27 * CubicFoot),
        ("m3", false, 1000),
    ];

    /// <summary>The names of all units of mass and volume.</summary>
    public static IReadOnlyList<string> Names { get; } = Array.ConvertAll(Units, u => u.Name);

    /// <summary>One of the unit, exactly; null if it is no unit of mass or volume.</summary>
    /// <param name="unit">A name such as <c>kg</c> or <c>yd3</c>.</param>
    public static UnitSize? Find(string unit)
    {
        foreach (var (name, isMass, size) in Units)
        {
            if (string.Equals(name, unit, StringComparison.Ordinal))
            {
                var exact = Spread.Exact(size);
                return isMass
                    ? UnitSize.OfMass(name, exact, wholeByDefault: false)
                    : UnitSize.OfVolume(name, exact, wholeByDefault: false);
            }
        }

        return null;
    }
}
