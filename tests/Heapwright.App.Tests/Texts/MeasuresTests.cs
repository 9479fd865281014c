using System.Globalization;
using System.Xml.Linq;
using Heapwright.App.BuildSheets;
using Heapwright.App.Drawings;
using Heapwright.App.Tests.Drawings;
using Heapwright.App.Texts;
using Heapwright.Core.Quantities;
using UnitsNet;

namespace Heapwright.App.Tests.Texts;

/// <summary>
/// Conversions after the definitions (exact): inch 2.54 cm, pound 0.45359237 kg, US gallon 3.785411784 l, imperial
/// gallon 4.54609 l.
/// </summary>
public sealed class MeasuresTests
{
    [Theory]
    [InlineData("metric", "40 L", "45.5 L", "50 kg", "55 °C", "1.2 m", "12 cm", "1 m³", "kg/m³")]
    [InlineData(
        "us",
        "11 gal",
        "12 gal",
        "110 lb",
        "131 °F",
        "3.9 ft",
        "4.5 in",
        "35.3 ft³",
        "lb/yd³"
    )]
    [InlineData(
        "uk",
        "8.75 UK gal",
        "10 UK gal",
        "110 lb",
        "55 °C",
        "3.9 ft",
        "4.5 in",
        "35.3 ft³",
        "lb/yd³"
    )]
    public void Quantities_InEverySet_AreConverted(
        string name,
        string water,
        string given,
        string mass,
        string temperature,
        string side,
        string thickness,
        string heap,
        string density
    )
    {
        var measures = Measures.Find(name)!;

        // 40 l are 10.6 US gallons and 8.8 imperial ones; 45.4609 l are 12.0 and 10.
        Assert.Equal(water, measures.Water(40));
        Assert.Equal(given, measures.LitresAsGiven(45.4609));
        Assert.Equal(mass, measures.Mass(Mass.FromKilograms(50)));
        Assert.Equal(temperature, measures.Temperature(Temperature.FromDegreesCelsius(55)));
        Assert.Equal(side, measures.Long(Length.FromMeters(1.2)));
        Assert.Equal(thickness, measures.Short(Length.FromCentimeters(12)));
        Assert.Equal(heap, measures.Heap(Volume.FromCubicMeters(1)));
        Assert.Equal(density, measures.DensityUnit);
    }

    [Fact]
    public void Name_OfNoSet_IsNone() => Assert.Null(Measures.Find("si"));

    [Fact]
    public void Density_InPounds_IsByTheCubicYard()
    {
        // 1 kg/m³ is 1.6856 lb/yd³ (2.20462 lb over 1.30795 yd³).
        var density = Measures.UsCustomary.InDensity(Spread.Exact(1000));

        Assert.InRange(density.Typical, 1685.5, 1685.6);
    }

    [Theory]
    [InlineData("metric", 0.24, "")]
    [InlineData("metric", 0.3, "0.5 L")]
    [InlineData("metric", 2.7, "2.5 L")]
    [InlineData("metric", 12.4, "12 L")]
    [InlineData("us", 0.4, "")]
    [InlineData("us", 0.9, "0.25 gal")]
    [InlineData("uk", 4.6, "1 UK gal")]
    public void Water_OfALayer_IsWhatCanBePoured(string name, double litres, string poured) =>
        Assert.Equal(poured, Measures.Find(name)!.Water(litres));

    [Theory]
    [InlineData("metric")]
    [InlineData("us")]
    [InlineData("uk")]
    public void Sheet_WaterOfALayer_IsTheSameInDrawingAndText(string name)
    {
        var measures = Measures.Find(name)!;
        var sheet = HeapSvgTests.Sheet(HeapSvgTests.Bay, measures);
        XNamespace svg = "http://www.w3.org/2000/svg";
        var drawn = XDocument
            .Parse(HeapSvg.Of(sheet, PictureSize.Narrow))
            .Descendants(svg + "text")
            .Select(t => t.Value)
            .Where(t => t.EndsWith(" " + measures.VolumeUnit, StringComparison.Ordinal))
            .ToList();

        var told = sheet
            .Plan.Layers.Where(l => SheetWords.HasWater(l, measures))
            .Select(l => SheetWords.Water(l, measures))
            .ToList();
        Assert.NotEmpty(told);
        Assert.Equal(told, drawn);
        Assert.All(told, t => Assert.DoesNotMatch("^0(\\.[1346789].*)? ", t));
    }

    [Fact]
    public void Reason_WithQuantities_IsInTheReadersMeasures()
    {
        var reason = Core.Reasons.Reason.Of(
            "buildplans.no_cover",
            Length.FromCentimeters(10),
            Length.FromCentimeters(15)
        );

        Assert.Contains("10 cm to 15 cm", Words.Of(reason), StringComparison.Ordinal);
        Assert.Contains("4 in to 6 in", Measures.Imperial.Say(reason), StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_InACommaCulture_HaveAComma() =>
        Assert.Equal(
            "3,5 L",
            (Measures.Metric with { Culture = CultureInfo.GetCultureInfo("de-DE") }).Volume(
                Volume.FromLiters(3.46)
            )
        );
}
