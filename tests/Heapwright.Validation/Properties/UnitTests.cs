using System.Globalization;

namespace Heapwright.Validation.Properties;

/// <summary>The units of the contract against their legal definitions, as numbers typed here.</summary>
public class UnitTests
{
    // The pound is 0.453 592 37 kg exactly (international yard and pound agreement, 1959; NIST Handbook 44, Appendix C);
    // the ounce is its sixteenth, the short ton 2000 pounds. From memory.
    [Theory]
    [InlineData("g", 0.001)]
    [InlineData("kg", 1)]
    [InlineData("t", 1000)]
    [InlineData("oz", 0.028349523125)]
    [InlineData("lb", 0.45359237)]
    [InlineData("ton_us", 907.18474)]
    public void Mass_OneOfTheUnit_IsItsLegalKilograms(string unit, double kilograms) =>
        Assert.Equal(kilograms, Mixed(unit, 1)["wet_mass_kg"].Typical(), kilograms * 1e-12);

    // The US gallon is 231 cubic inches, 3.785 411 784 l; the foot 0.3048 m, so the cubic foot 28.316 846 592 l and the
    // cubic yard 764.554 857 984 l (NIST Handbook 44, Appendix C). The imperial gallon is 4.546 09 l (Weights and Measures
    // Act 1985, Schedule 1). All exact; from memory.
    [Theory]
    [InlineData("ml", 0.001)]
    [InlineData("l", 1)]
    [InlineData("gal_us", 3.785411784)]
    [InlineData("gal_uk", 4.54609)]
    [InlineData("ft3", 28.316846592)]
    [InlineData("yd3", 764.554857984)]
    [InlineData("m3", 1000)]
    public void Volume_OneOfTheUnit_IsItsLegalLitres(string unit, double litres)
    {
        Assert.Equal(litres, Mixed(unit, 1)["volume_l"].Typical(), litres * 1e-12);
        // At 250 kg/m³ a litre weighs a quarter of a kilogram.
        Assert.Equal(litres / 4, Mixed(unit, 1)["wet_mass_kg"].Typical(), litres * 1e-12);
    }

    // A container is as large as it is said to be, heap included; what it holds is exact then.
    [Theory]
    [InlineData("""{"bucket":14}""", 14)]
    [InlineData("""{"bucket":{"l":14}}""", 14)]
    [InlineData("""{"bucket":{"l":14,"heaped":true}}""", 14)]
    public void Container_OfAGivenSize_HoldsIt(string containers, double litres)
    {
        var answer = Mixed("bucket", 3, containers);
        Assert.Equal(3 * litres, answer["volume_l"].Low(), 1e-9);
        Assert.Equal(3 * litres, answer["volume_l"].High(), 1e-9);
        Assert.Equal(litres, answer["containers"]!["bucket"]!["l"].Number());
    }

    [Fact]
    public void Container_WeighedInKilograms_WeighsThat() =>
        Assert.Equal(54, Mixed("bale", 3, """{"bale":{"kg":18}}""")["wet_mass_kg"].Typical(), 1e-9);

    // Used loosely every day: one cubic yard is 3 × 3 × 3 ft, 27 cubic feet (common practice, no source).
    [Fact]
    public void CubicYard_IsTwentySevenCubicFeet() =>
        Assert.Equal(
            Mixed("yd3", 1)["volume_l"].Typical(),
            Mixed("ft3", 27)["volume_l"].Typical(),
            1e-9
        );

    private static System.Text.Json.Nodes.JsonObject Mixed(
        string unit,
        double value,
        string containers = "{}"
    ) =>
        Ask.Mix(
            $$"""
            {"ingredients":[{"name":"zzq","carbon_pct_db":45,"nitrogen_pct_db":1.5,"moisture_pct_wb":50,"bulk_density_kg_m3":250,
              "amount":{"value":{{value.ToString(
                CultureInfo.InvariantCulture
            )}},"unit":"{{unit}}"} }],"containers":{{containers}} }
            """
        ).Json;
}
