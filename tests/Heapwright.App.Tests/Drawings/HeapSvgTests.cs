using System.Globalization;
using System.Xml.Linq;
using Heapwright.App.BuildSheets;
using Heapwright.App.Contract;
using Heapwright.App.Drawings;
using Heapwright.App.Tests.Contract;
using Heapwright.App.Texts;

namespace Heapwright.App.Tests.Drawings;

public class HeapSvgTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    internal const string Bay = """{"shape":"box","length_m":1.2,"width_m":1.2,"height_m":1.1}""";

    private const string Ring = """{"shape":"ring","diameter_m":1.2,"height_m":1.1}""";

    private const string Cone = """{"shape":"cone","diameter_m":1.8,"height_m":1.1}""";

    private const string Windrow =
        """{"shape":"windrow","length_m":4,"width_m":2,"height_m":1.1}""";

    [Theory]
    [InlineData(Bay, PictureSize.Wide, SvgUse.File)]
    [InlineData(Bay, PictureSize.Narrow, SvgUse.Page)]
    [InlineData(Ring, PictureSize.Narrow, SvgUse.File)]
    [InlineData(Cone, PictureSize.Wide, SvgUse.Page)]
    [InlineData(Windrow, PictureSize.Wide, SvgUse.File)]
    public void Svg_EveryShapeAndUse_IsWellFormedAndHarmless(
        string bin,
        PictureSize size,
        SvgUse use
    )
    {
        var sheet = Sheet(bin);
        var root = XDocument.Parse(HeapSvg.Of(sheet, size, use, "a")).Root!;

        Assert.Equal("img", root.Attribute("role")!.Value);
        Assert.NotEqual("", root.Element(Svg + "title")!.Value);
        Assert.Contains(
            "Kitchen <scraps> & \"peel\"",
            root.Element(Svg + "desc")!.Value,
            StringComparison.Ordinal
        );
        foreach (var element in root.DescendantsAndSelf())
        {
            // A strict content security policy forbids these.
            Assert.NotEqual("style", element.Name.LocalName);
            Assert.NotEqual("script", element.Name.LocalName);
            Assert.Null(element.Attribute("style"));
            Assert.DoesNotContain(
                element.Attributes(),
                a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal)
            );
        }

        var ids = root.Descendants().Attributes("id").Select(a => a.Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct(StringComparer.Ordinal).Count());
        Assert.All(ids, id => Assert.StartsWith("a-", id, StringComparison.Ordinal));
        foreach (var fill in root.Descendants().Attributes("fill").Select(a => a.Value))
        {
            if (fill.StartsWith("url(#", StringComparison.Ordinal))
            {
                Assert.Contains(fill[5..^1], ids);
            }

            Assert.Equal(
                use == SvgUse.Page && fill.StartsWith("var(", StringComparison.Ordinal),
                fill.StartsWith("var(", StringComparison.Ordinal)
            );
        }
    }

    [Fact]
    public void Svg_Numbers_AreThoseOfTheLayers()
    {
        var sheet = Sheet(Bay);
        var root = XDocument.Parse(HeapSvg.Of(sheet, PictureSize.Narrow)).Root!;
        var bold = root.Descendants(Svg + "text")
            .Where(t => t.Attribute("font-weight")!.Value == "700")
            .Select(t => int.Parse(t.Value, CultureInfo.InvariantCulture));

        Assert.Equal(sheet.Plan.Layers.Select(l => l.Number), bold);
    }

    [Fact]
    public void Picture_Scale_IsTheSameForEveryLayer()
    {
        var sheet = Sheet(Bay);
        var picture = HeapPicture.Of(sheet, PictureSize.Wide);
        var areas = picture.Items.OfType<PictureItem.Area>().ToList();

        // The first area is the base: its foot is straight, 120 cm wide.
        var x = areas[0].Points.Where((_, i) => i % 2 == 0);
        Assert.Equal(120 * picture.UnitsPerCentimetre, x.Max() - x.Min(), 1e-6);

        // Scraps lie 25 cm from either side.
        var scraps = areas.Where(a => a.Pattern == PatternKind.Scraps).ToList();
        Assert.NotEmpty(scraps);
        foreach (var area in scraps)
        {
            var inner = area.Points.Where((_, i) => i % 2 == 0).ToList();
            Assert.Equal(70 * picture.UnitsPerCentimetre, inner.Max() - inner.Min(), 1e-6);
        }
    }

    [Fact]
    public void Svg_CommaCulture_StillWritesPoints()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            var sheet = Sheet(Bay);
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("en-GB");
            var english = HeapSvg.Of(sheet);
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(english, HeapSvg.Of(sheet));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Svg_Inches_NamesNoCentimetres()
    {
        var sheet = Sheet(Bay, Measures.UsCustomary);
        var root = XDocument.Parse(HeapSvg.Of(sheet, PictureSize.Wide)).Root!;

        Assert.DoesNotContain(
            root.Descendants(Svg + "text"),
            t => t.Value.Contains("cm", StringComparison.Ordinal)
        );
        Assert.Contains(root.Descendants(Svg + "text"), t => t.Value == "3.9 ft");
    }

    [Fact]
    public void Patterns_AllKinds_DifferInMarks()
    {
        var kinds = Enum.GetValues<PatternKind>();
        var marks = kinds
            .Select(k => string.Join(';', PatternTile.Of(k).Marks.SelectMany(m => m.Points)))
            .ToList();

        Assert.Equal(kinds.Length, marks.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Prefix_WithAQuote_IsRefused() =>
        Assert.Throws<ArgumentException>(() =>
            HeapSvg.Of(Sheet(Bay), PictureSize.Wide, SvgUse.Page, "a\"b")
        );

    internal static BuildSheet Sheet(string bin, Measures? measures = null) =>
        BuildAnswers.Sheet(
            BuildAnswersTests.Question(
                $$$"""
                {"ingredients":[
                 {"material":"grass_clippings_fresh","amount":{"value":4,"unit":"wheelbarrow"}},
                 {"material":"leaves_mixed_dry","amount":{"value":4,"unit":"bag"}},
                 {"material":"wheat_straw","amount":{"value":1,"unit":"bale"}},
                 {"material":"wood_chips_coarse","amount":{"value":2,"unit":"wheelbarrow"}},
                 {"material":"kitchen_scraps","name":"Kitchen <scraps> & \"peel\"","amount":{"value":3,"unit":"bucket"}}],
                 "water_l":60,"bin":{{{bin}}} }
                """
            ),
            measures
        );
}
