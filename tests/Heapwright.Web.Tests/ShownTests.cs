using System.Globalization;
using Heapwright.App.Sites;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Tests;

/// <summary>Conversions after the definitions of the foot, pound, inch and gallons (exact, common knowledge).</summary>
public sealed class ShownTests
{
    private static readonly Shown Metric = new(
        DisplayUnits.Metric,
        CultureInfo.GetCultureInfo("en-GB")
    );

    private static readonly Shown American = new(
        DisplayUnits.American,
        CultureInfo.GetCultureInfo("en-US")
    );

    [Fact]
    public void Quantities_InAmericanUnits_AreConverted()
    {
        // 37.854 l in 10 US gallons; 45.359 kg in 100 lb; 0.9144 m in 3 ft; 12.7 cm in 5 in; 131 °F at 55 °C.
        Assert.Equal("10 gal", American.Volume(37.854));
        Assert.Equal("100 lb", American.Mass(45.359));
        Assert.Equal("3 ft", American.Length(0.9144));
        Assert.Equal("5 in", American.Thickness(12.7));
        Assert.Equal("131 °F", American.Temperature(55));
    }

    [Fact]
    public void Quantities_InMetricUnits_HaveNoMoreFiguresThanAreKnown()
    {
        Assert.Equal("734–1,550 L", Metric.Volume(733.6, 1549.7));
        Assert.Equal("3.5 L", Metric.Volume(3.46));
        Assert.Equal("12 cm", Metric.Thickness(12.3));
        Assert.Equal("55 °C", Metric.Temperature(55));
    }

    [Theory]
    [InlineData(3.7)]
    [InlineData(0)]
    [InlineData(1200)]
    public void Volume_ThereAndBack_IsTheSame(double litres)
    {
        foreach (var units in new[] { "l", "gal_us", "gal_uk" })
        {
            var shown = Metric with { Units = DisplayUnits.Metric with { Volume = units } };

            Assert.InRange(shown.FromVolume(shown.InVolume(litres)), litres - 1e-9, litres + 1e-9);
        }
    }

    [Fact]
    public void Numbers_InACommaCulture_HaveAComma() =>
        Assert.Equal(
            "3,5 L",
            (Metric with { Culture = CultureInfo.GetCultureInfo("de-DE") }).Volume(3.46)
        );
}
