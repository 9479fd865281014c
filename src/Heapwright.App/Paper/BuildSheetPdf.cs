using Heapwright.App.BuildSheets;
using Heapwright.App.Drawings;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.BuildPlans;
using PdfSharp.Drawing;

namespace Heapwright.App.Paper;

/// <summary>The build sheet as PDF: drawing, layers to tick off, and what goes with them.</summary>
public sealed class BuildSheetPdf
{
    private const double RowFont = 9.5;
    private const double SmallFont = 8.5;
    private static readonly double[] TextFonts = [8.8, 8.4, 8];

    private readonly BuildSheet sheet;
    private readonly BuildPlan plan;
    private readonly Measures measures;
    private readonly PaperPages pages;

    private BuildSheetPdf(BuildSheet sheet, PaperPages pages)
    {
        this.sheet = sheet;
        this.pages = pages;
        plan = sheet.Plan;
        measures = sheet.Measures;
    }

    /// <summary>Prints a sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="madeAt">The time it was made, which stands in the file.</param>
    /// <returns>The bytes of a PDF file; the same sheet, paper and time give the same bytes.</returns>
    public static byte[] Render(BuildSheet sheet, PaperSize paper, DateTimeOffset madeAt)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var title = Words.Of("buildplans.title");
        using var blank = new PaperPages(
            sheet.Name is { } name ? $"{title}: {name}" : title,
            paper,
            madeAt
        );
        return new BuildSheetPdf(sheet, blank).Print();
    }

    private byte[] Print()
    {
        Heading();
        PictureAndStart();
        Table();
        PaperColumns.Print(pages, TextFonts, [.. Blocks()]);
        return pages.Finish(
            (page, all) => Words.Of("buildplans.page", measures.Culture, page, all)
        );
    }

    private void Heading()
    {
        pages.Text(
            sheet.Name ?? SheetWords.Bin(plan.Bin, measures),
            PaperPages.Plain(10),
            pages.Left,
            pages.Y + 8
        );
        pages.Text(
            Words.Of("buildplans.built_on"),
            PaperPages.Plain(9),
            pages.Right,
            pages.Y + 8,
            XStringFormats.BaseLineRight
        );
        pages.Text(Words.Of("buildplans.title"), PaperPages.Bold(22), pages.Left, pages.Y + 34);
        pages.Y += 50;
        var lines = new[]
        {
            SheetWords.Subtitle(plan, measures),
            (sheet.Name is null ? "" : SheetWords.Bin(plan.Bin, measures) + ". ")
                + SheetWords.Facts(plan, measures),
        };
        foreach (var line in lines)
        {
            Paragraph(line, PaperPages.Plain(RowFont), pages.Left, pages.Right - pages.Left);
        }

        pages.Y += 6;
    }

    // The drawing on the left; how to build, and what to prepare first, beside it.
    private void PictureAndStart()
    {
        var picture = HeapPicture.Of(sheet, PictureSize.Narrow);
        var half = (pages.Right - pages.Left) * 0.56;
        var most = (pages.Bottom - pages.Y) * 0.42;
        var scale = Math.Min(half / picture.Width, most / picture.Height);
        var top = pages.Y;
        PaperPicture.Draw(pages.Page, picture, pages.Left, top, scale);
        var x = pages.Left + half + 12;
        var width = pages.Right - x;
        Block("how", [Words.Of("buildplans.how")], x, width);
        var first = SheetWords.PrepareFirst(plan);
        if (first.Count > 0)
        {
            pages.Y += 6;
            Block("before", first, x, width, top + (most * 1.15));
        }

        pages.Y = Math.Max(pages.Y, top + (picture.Height * scale)) + 10;
    }

    private void Block(
        string heading,
        IReadOnlyList<string> texts,
        double x,
        double width,
        double limit = double.PositiveInfinity
    )
    {
        pages.Text(
            Words.Of("buildplans.heading_" + heading),
            PaperPages.Bold(10.5),
            x,
            pages.Y + 10
        );
        pages.Y += 15;
        var font = PaperPages.Plain(SmallFont);
        for (var i = 0; i < texts.Count; i++)
        {
            // What finds no room beside the picture stands with the layers all the same.
            if (pages.Y + (2 * SmallFont) > limit && i > 0)
            {
                return;
            }

            Paragraph(texts[i], font, x, width);
            pages.Y += 2;
        }
    }

    private void Paragraph(string text, XFont font, double x, double width)
    {
        foreach (var line in pages.Lines(text, font, width))
        {
            pages.Text(line, font, x, pages.Y + font.Size);
            pages.Y += font.Size * 1.32;
        }
    }

    private void Table()
    {
        var columns = Columns();
        TableHead(columns);
        foreach (var layer in plan.Layers)
        {
            Row(layer, columns);
        }

        pages.Y += 8;
    }

    private (
        double Number,
        double Swatch,
        double What,
        double Thick,
        double Water,
        double Then
    ) Columns()
    {
        var left = pages.Left;
        var then = pages.Right - 138;
        return (left + 20, left + 42, left + 70, then - 92, then - 48, then);
    }

    private void TableHead(
        (double Number, double Swatch, double What, double Thick, double Water, double Then) at
    )
    {
        pages.Need(60);
        var font = PaperPages.Bold(SmallFont);
        var y = pages.Y + 9;
        pages.Text(Words.Of("buildplans.column_amounts"), font, at.What, y);
        pages.Text(
            Words.Of("buildplans.column_thick"),
            font,
            at.Thick + 40,
            y,
            XStringFormats.BaseLineRight
        );
        pages.Text(
            Words.Of("buildplans.column_water"),
            font,
            at.Water + 40,
            y,
            XStringFormats.BaseLineRight
        );
        pages.Text(Words.Of("buildplans.column_then"), font, at.Then, y);
        pages.Y += 14;
        Rule(1);
    }

    private void Row(
        BuildLayer layer,
        (double Number, double Swatch, double What, double Thick, double Water, double Then) at
    )
    {
        var bold = PaperPages.Bold(RowFont);
        var plain = PaperPages.Plain(RowFont);
        var small = PaperPages.Plain(SmallFont - 0.5);
        const double Leading = RowFont * 1.3;
        var what = layer
            .Parts.Select(p =>
                (
                    Amount: UnitWords.Amount(p.Amount, p.Ingredient.Unit, measures.Culture),
                    Name: SheetWords.Name(p)
                )
            )
            .Select(p =>
            {
                var indent = pages.Page.MeasureString(p.Amount + "  ", bold).Width;
                var wide = at.Thick - at.What - 4;
                return (
                    p.Amount,
                    Indent: indent,
                    Lines: pages.Lines(p.Name, plain, Math.Max(60, wide - indent))
                );
            })
            .ToList();
        var then = pages.Lines(SheetWords.Then(layer), small, pages.Right - at.Then);
        var height =
            Math.Max(
                Math.Max(what.Sum(w => w.Lines.Count) * Leading, then.Count * small.Size * 1.25),
                18
            ) + 6;
        if (pages.Need(height))
        {
            TableHead(at);
        }

        var wet = SheetWords.HasWater(layer, measures);
        var top = pages.Y + 3;
        var first = top + RowFont + 1;
        pages.Page.DrawRectangle(new XPen(XColors.Black, 1), pages.Left, top + 1, 13, 13);
        pages.Text(
            layer.Number.ToString("0", measures.Culture),
            bold,
            at.Number + 14,
            first,
            XStringFormats.BaseLineRight
        );
        PaperPicture.Swatch(pages.Page, HeapSvg.SwatchKind(layer), at.Swatch, top, 18);
        var y = first;
        foreach (var (amount, indent, lines) in what)
        {
            pages.Text(amount, bold, at.What, y);
            foreach (var line in lines)
            {
                pages.Text(line, plain, at.What + indent, y);
                y += Leading;
            }
        }

        pages.Text(
            measures.Short(layer.Thickness),
            plain,
            at.Thick + 40,
            first,
            XStringFormats.BaseLineRight
        );
        pages.Text(
            wet ? measures.Water(layer.Water.Liters) : "–",
            wet ? bold : plain,
            at.Water + 40,
            first,
            XStringFormats.BaseLineRight
        );
        y = first - 1;
        foreach (var line in then)
        {
            pages.Text(line, small, at.Then, y);
            y += small.Size * 1.25;
        }

        pages.Y += height;
        Rule(0.4);
    }

    private void Rule(double weight) =>
        pages.Page.DrawLine(
            new XPen(XColors.Black, weight),
            pages.Left,
            pages.Y,
            pages.Right,
            pages.Y
        );

    private IEnumerable<PaperBlock> Blocks()
    {
        PaperBlock Of(string heading, IEnumerable<string> texts) =>
            new(Words.Of("buildplans.heading_" + heading), [.. texts]);

        yield return Of("notes", plan.Notes.Select(measures.Say));
        yield return Of("left_over", plan.LeftOver.Select(p => SheetWords.Part(p, measures)));
        yield return Of(
            "cautions",
            sheet.Cautions.Select(c => c.Why.Length > 0 ? $"{c.Text} {c.Why}" : c.Text)
        );
        yield return Of("tools", [string.Join(", ", plan.Tools.Select(SheetWords.Tool))]);
        yield return Of("place", plan.Place.Select(SheetWords.Place));
        yield return Of("assumptions", sheet.Assumptions);
    }
}
