using System.Globalization;
using Bunit;
using Heapwright.App.Sites;
using Heapwright.Web.Drawings;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Tests;

public sealed class DrawingTests
{
    private static readonly Shown Show = new(
        DisplayUnits.Metric,
        CultureInfo.GetCultureInfo("de-DE")
    );

    private static readonly Bay Bay = new()
    {
        Id = new Guid("00000000-0000-4000-8000-000000000001"),
        Name = "Left bay",
        Shape = "box",
        LengthM = 1,
        WidthM = 1,
        HeightM = 1,
    };

    private static GaugeView View(double low, double typical, double high) =>
        new(
            "moisture_pct_wb",
            new ValueRange(low, typical, high),
            50,
            60,
            "good",
            0.8,
            "Damp.",
            "common_practice"
        );

    [Fact]
    public void Gauge_Drawn_SaysInWordsWhatItShows()
    {
        using var context = new BunitContext();

        var gauge = context.Render<Gauge>(p =>
            p.Add(g => g.View, View(52.4, 55.3, 58.2)).Add(g => g.Show, Show)
        );

        Assert.Equal(
            "Moisture: good. It is about 55 %, between 52 and 58. The aim is 50 to 60.",
            gauge.Find("svg").GetAttribute("aria-label")
        );
        Assert.Equal("img", gauge.Find("svg").GetAttribute("role"));
    }

    [Fact]
    public void Gauge_Aim_LiesWhereItsEndsLieOnTheScale()
    {
        using var context = new BunitContext();

        var aim = context
            .Render<Gauge>(p => p.Add(g => g.View, View(52, 55, 58)).Add(g => g.Show, Show))
            .Find("rect.aim");

        // The scale runs from 20 to 90 % over 312 units from 4: 50 lies at 4 + 312 × 30/70, 60 at 312 × 10/70 more.
        Assert.Equal("137.71", aim.GetAttribute("x"));
        Assert.Equal("44.57", aim.GetAttribute("width"));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    [InlineData(99)]
    public void Gauge_ValueBeyondTheScale_StaysWithinThePicture(double value)
    {
        using var context = new BunitContext();

        var needle = context
            .Render<Gauge>(p =>
                p.Add(g => g.View, View(value, value, value)).Add(g => g.Show, Show)
            )
            .Find("path.needle")
            .GetAttribute("d")!;

        var x = double.Parse(
            needle[1..needle.IndexOf(' ', StringComparison.Ordinal)],
            CultureInfo.InvariantCulture
        );
        Assert.InRange(x, 0, 304);
    }

    [Fact]
    public void Gauge_ExactValue_HasNoBarForUncertainty()
    {
        using var context = new BunitContext();

        Assert.Empty(
            context
                .Render<Gauge>(p => p.Add(g => g.View, View(55, 55, 55)).Add(g => g.Show, Show))
                .FindAll("rect.spread")
        );
    }

    [Fact]
    public void HeapPicture_Bands_AreAsHighAsTheirShares()
    {
        using var context = new BunitContext();
        HeapPart[] parts = [new("straw", "Straw", 300), new("grass", "Grass", 100)];

        var bands = context
            .Render<HeapPicture>(p =>
                p.Add(h => h.Parts, parts)
                    .Add(h => h.Show, Show)
                    .Add(h => h.Bay, Bay)
                    .Add(h => h.FilledLitres, 800)
            )
            .FindAll("g[clip-path] rect");

        // 0.8 m at 250 units to the metre is 200: three quarters straw; half a unit more hides the seam.
        Assert.Equal("150.5", bands[0].GetAttribute("height"));
        Assert.Equal("50.5", bands[1].GetAttribute("height"));
        Assert.Equal("url(#look-straw)", bands[0].GetAttribute("fill"));
    }

    [Fact]
    public void HeapPicture_InACommaCulture_HasPointsInItsPaths()
    {
        using var context = new BunitContext();
        HeapPart[] parts = [new("straw", "Straw", 301.5), new("grass", "Grass", 99.7)];
        var culture = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
        try
        {
            var picture = context.Render<HeapPicture>(p =>
                p.Add(h => h.Parts, parts)
                    .Add(h => h.Show, Show)
                    .Add(h => h.Bay, Bay)
                    .Add(h => h.FilledLitres, 777)
            );

            Assert.All(
                picture.FindAll("path, rect, line, circle"),
                e => Assert.All(e.Attributes, a => Assert.DoesNotContain(',', a!.Value))
            );
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    [Fact]
    public void HeapPicture_Drawn_TellsTheSharesInWords()
    {
        using var context = new BunitContext();
        HeapPart[] parts = [new("straw", "Straw", 300), new("grass", "Grass", 100)];

        var label = context
            .Render<HeapPicture>(p =>
                p.Add(h => h.Parts, parts)
                    .Add(h => h.Show, Show)
                    .Add(h => h.Bay, Bay)
                    .Add(h => h.FilledLitres, 800)
            )
            .Find("svg")
            .GetAttribute("aria-label");

        Assert.Equal(
            "The heap in Left bay, about 0,8 m high, from the ground up: Straw 75 %, Grass 25 % of the loose volume.",
            label
        );
    }

    [Fact]
    public void Patterns_OfAllClasses_StandOnceOnThePage()
    {
        using var context = new BunitContext();

        var ids = context.Render<MaterialPatterns>().FindAll("pattern").Select(p => p.Id!).ToList();

        Assert.Equal(ids.Distinct(StringComparer.Ordinal), ids);
        Assert.Equal(App.Drawings.MaterialSprite.Names.Select(n => "look-" + n), ids);
    }
}
