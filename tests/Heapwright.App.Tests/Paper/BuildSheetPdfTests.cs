using Heapwright.App.BuildSheets;
using Heapwright.App.Contract;
using Heapwright.App.Paper;
using Heapwright.App.Tests.Contract;
using Heapwright.App.Tests.Drawings;
using UglyToad.PdfPig;

namespace Heapwright.App.Tests.Paper;

public class BuildSheetPdfTests
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 1, 12, 0, 0, TimeSpan.Zero);

    private const string Bay = """{"shape":"box","length_m":1.2,"width_m":1.2,"height_m":1.1}""";

    [Theory]
    [InlineData(PaperSize.A4, 595, 842)]
    [InlineData(PaperSize.Letter, 612, 792)]
    public void Pdf_EitherPaper_HoldsEveryLayerWithItsWater(
        PaperSize paper,
        double width,
        double height
    )
    {
        var sheet = HeapSvgTests.Sheet(Bay) with { Name = "Long bay" };
        using var pdf = PdfDocument.Open(BuildSheetPdf.Render(sheet, paper, Noon));

        var first = pdf.GetPage(1);
        Assert.Equal(width, first.Width, 0.5);
        Assert.Equal(height, first.Height, 0.5);
        var words = string.Join(
            ' ',
            pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text)
        );
        Assert.Contains("Build sheet", words, StringComparison.Ordinal);
        Assert.Contains("Long bay", words, StringComparison.Ordinal);
        Assert.Contains("2 wheelbarrows", words, StringComparison.Ordinal);
        Assert.Contains("Before you start", words, StringComparison.Ordinal);
        Assert.Contains("Cautions", words, StringComparison.Ordinal);
        Assert.Contains("Tools", words, StringComparison.Ordinal);
        Assert.Contains("Place", words, StringComparison.Ordinal);
        foreach (var layer in sheet.Plan.Layers.Where(l => l.Water.Liters > 0))
        {
            Assert.Contains(
                sheet.Measures.Water(layer.Water.Liters),
                words,
                StringComparison.Ordinal
            );
        }

        foreach (var caution in sheet.Cautions)
        {
            Assert.Contains(caution.Text.Split(' ')[0], words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Pdf_AllLetters_StandWithinTheMargins()
    {
        using var pdf = PdfDocument.Open(
            BuildSheetPdf.Render(HeapSvgTests.Sheet(Bay), PaperSize.A4, Noon)
        );
        foreach (var page in pdf.GetPages())
        {
            Assert.All(
                page.Letters,
                l =>
                {
                    Assert.InRange(l.BoundingBox.Left, 40, 556);
                    Assert.InRange(l.BoundingBox.Right, 40, 556);
                    Assert.InRange(l.BoundingBox.Bottom, 30, 805);
                }
            );
        }
    }

    [Fact]
    public void Pdf_OfTheSameSheetAndTime_HasTheSameBytes()
    {
        var sheet = HeapSvgTests.Sheet(Bay);
        var first = BuildSheetPdf.Render(sheet, PaperSize.A4, Noon);

        Assert.Equal(first, BuildSheetPdf.Render(sheet, PaperSize.A4, Noon));
        Assert.NotEqual(first, BuildSheetPdf.Render(sheet, PaperSize.A4, Noon.AddDays(1)));
        using var pdf = PdfDocument.Open(first);
        Assert.StartsWith(
            "D:20260501120000",
            pdf.Information.CreationDate,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "D:20260501120000",
            pdf.Information.ModifiedDate,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Pdf_FirstPage_IsUsedInFull()
    {
        using var pdf = PdfDocument.Open(
            BuildSheetPdf.Render(HeapSvgTests.Sheet(Bay), PaperSize.A4, Noon)
        );
        Assert.True(pdf.NumberOfPages >= 2, "cautions of five materials do not fit on one page");

        // But for the page number the lowest letters stand in the lowest eighth.
        var lowest = pdf.GetPage(1)
            .Letters.Select(l => l.BoundingBox.Bottom)
            .Where(b => b > 55)
            .Min();
        Assert.InRange(lowest, 55, 842 / 8.0);
    }

    [Fact]
    public void Pdf_LongAndStrangeNames_AreBrokenAndKept()
    {
        var name = new string('W', 150);
        var sheet = BuildAnswers.Sheet(
            BuildAnswersTests.Question(
                $$$"""
                {"ingredients":[{"material":"wheat_straw","name":"{{{name}}}","amount":{"value":1,"unit":"bale"} },
                 {"material":"grass_clippings_fresh","name":"草 🌱 é","amount":{"value":3,"unit":"wheelbarrow"} }],"water_l":20}
                """
            )
        );

        using var pdf = PdfDocument.Open(BuildSheetPdf.Render(sheet, PaperSize.Letter, Noon));
        Assert.All(
            pdf.GetPages().SelectMany(p => p.Letters),
            l => Assert.InRange(l.BoundingBox.Right, 0, 575)
        );
    }
}
