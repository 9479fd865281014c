using Heapwright.Core.Hygiene;

namespace Heapwright.Core.Tests.Hygiene;

public class HeatBandTests
{
    // 131 °F is 55.0 °C: 40 CFR 503 and 7 CFR 205.2 name the same temperature in the two units.
    [Theory]
    [InlineData(55.0, true)]
    [InlineData(54.9, false)]
    [InlineData(54.99999999999999, true)] // the last bits of a quotient
    [InlineData((130.9 - 32) / 1.8, false)]
    [InlineData(54.999, false)]
    public void AtOrAbove55_AtItsEdge(double celsius, bool holds) =>
        Assert.Equal(holds, new HeatBand(55).Holds(celsius));

    [Theory]
    [InlineData(55.0, false)]
    [InlineData(55.00000000000001, false)]
    [InlineData(55.1, true)]
    public void Above55_MustBeExceeded(double celsius, bool holds) =>
        Assert.Equal(holds, new HeatBand(55, MustExceed: true).Holds(celsius));

    // 170 °F is 76.67 °C; a thermometer in °C shows 76.7.
    [Theory]
    [InlineData((170 - 32) / 1.8, true)]
    [InlineData(76.7, true)]
    [InlineData((170.1 - 32) / 1.8, false)]
    [InlineData(76.8, false)]
    public void Ceiling_AtItsEdge(double celsius, bool holds) =>
        Assert.Equal(holds, new HeatBand(55, HighestCelsius: 76.7).Holds(celsius));
}
