using Heapwright.Core.Amounts;
using UnitsNet;

namespace Heapwright.Core.Tests.Amounts;

public class MeasureUnitsTests
{
    public static TheoryData<string, double> Masses =>
        new()
        {
            { "g", Mass.FromGrams(1).Kilograms },
            { "kg", Mass.FromKilograms(1).Kilograms },
            { "t", Mass.FromTonnes(1).Kilograms },
            { "oz", Mass.FromOunces(1).Kilograms },
            { "lb", Mass.FromPounds(1).Kilograms },
            { "ton_us", Mass.FromShortTons(1).Kilograms },
        };

    public static TheoryData<string, double> Volumes =>
        new()
        {
            { "ml", Volume.FromMilliliters(1).Liters },
            { "l", Volume.FromLiters(1).Liters },
            { "gal_us", Volume.FromUsGallons(1).Liters },
            { "gal_uk", Volume.FromImperialGallons(1).Liters },
            { "ft3", Volume.FromCubicFeet(1).Liters },
            { "yd3", Volume.FromCubicFeet(27).Liters },
            { "m3", Volume.FromCubicMeters(1).Liters },
        };

    [Theory]
    [MemberData(nameof(Masses))]
    [MemberData(nameof(Volumes))]
    public void Unit_AgainstUnitsNet_HasTheSameSize(string unit, double size)
    {
        var found = MeasureUnits.Find(unit)!;
        Assert.Equal(size, found.Size.Typical, 1e-9 * size);
        Assert.True(found.Size.IsExact);
    }

    [Fact]
    public void Names_AreAllTested() =>
        Assert.Equal(MeasureUnits.Names.Count, Masses.Count + Volumes.Count);

    [Fact]
    public void Unit_Unknown_IsNull() => Assert.Null(MeasureUnits.Find("pile"));
}
