using PdfSharp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Heapwright.App.Paper;

/// <summary>Pages of one size, and text set on them; lengths in points, y from the top.</summary>
internal sealed class PaperPages : IDisposable
{
    public const double Margin = 42;
    private const double FooterHeight = 22;

    private readonly PdfDocument document;
    private readonly PageSize size;
    private readonly List<PdfPage> pages = [];
    private XGraphics? graphics;

    public PaperPages(string title, BuildSheets.PaperSize paper, DateTimeOffset madeAt)
    {
        EmbeddedFonts.Use();
        document = new PdfDocument();
        document.Info.Title = title;
        document.Info.Creator = "Heapwright";
        document.Info.CreationDate = madeAt.UtcDateTime;
        document.Info.ModificationDate = madeAt.UtcDateTime;
        size = paper == BuildSheets.PaperSize.Letter ? PageSize.Letter : PageSize.A4;
        NewPage();
    }

    public double Width { get; private set; }

    public double Height { get; private set; }

    /// <summary>Where the next thing is set.</summary>
    public double Y { get; set; }

    public double Left => Margin;

    public double Right => Width - Margin;

    /// <summary>The last line on which text may stand.</summary>
    public double Bottom => Height - Margin - FooterHeight;

    public int Count => pages.Count;

    public XGraphics Page => graphics!;

    public static XFont Plain(double height) =>
        new(EmbeddedFonts.Family, height, XFontStyleEx.Regular);

    public static XFont Bold(double height) => new(EmbeddedFonts.Family, height, XFontStyleEx.Bold);

    public void NewPage()
    {
        graphics?.Dispose();
        var page = document.AddPage();
        page.Size = size;
        pages.Add(page);
        graphics = XGraphics.FromPdfPage(page);
        Width = page.Width.Point;
        Height = page.Height.Point;
        Y = Margin;
    }

    /// <summary>Begins a new page where less than this is left.</summary>
    public bool Need(double height)
    {
        if (Y + height <= Bottom)
        {
            return false;
        }

        NewPage();
        return true;
    }

    public void Text(
        string text,
        XFont font,
        double x,
        double baseline,
        XStringFormat? format = null
    ) =>
        Page.DrawString(
            text,
            font,
            XBrushes.Black,
            new XPoint(x, baseline),
            format ?? XStringFormats.BaseLineLeft
        );

    /// <summary>Breaks a text into lines that fit a width; a word too long for a line is broken.</summary>
    public IReadOnlyList<string> Lines(string text, XFont font, double width)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var rest = word;
            var longer = line.Length == 0 ? rest : line + " " + rest;
            if (Fits(longer, font, width))
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            while (!Fits(rest, font, width) && rest.Length > 1)
            {
                var length = rest.Length - 1;
                while (length > 1 && !Fits(rest[..length], font, width))
                {
                    length--;
                }

                lines.Add(rest[..length]);
                rest = rest[length..];
            }

            line = rest;
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    /// <summary>Sets a heading below what was set before.</summary>
    public void Heading(string text)
    {
        Need(40);
        Y += 2;
        Paragraph(text, Bold(12));
        Y += 4;
    }

    /// <summary>Sets a text in as many lines as it needs.</summary>
    public void Paragraph(string text, XFont font, double indent = 0)
    {
        var x = Left + indent;
        foreach (var line in Lines(text, font, Right - x))
        {
            Need(font.Size * 1.4);
            Text(line, font, x, Y + font.Size + 1);
            Y += font.Size * 1.32;
        }
    }

    /// <summary>Writes the page numbers and gives the file.</summary>
    /// <param name="foot">The foot of a page: its number and how many there are.</param>
    public byte[] Finish(Func<int, int, string> foot)
    {
        graphics?.Dispose();
        graphics = null;
        for (var i = 0; i < pages.Count; i++)
        {
            using var page = XGraphics.FromPdfPage(pages[i], XGraphicsPdfPageOptions.Append);
            page.DrawString(
                foot(i + 1, pages.Count),
                Plain(8),
                XBrushes.Black,
                new XPoint(Width / 2, Height - Margin + 6),
                XStringFormats.BaseLineCenter
            );
        }

        using var stream = new MemoryStream();
        document.Save(stream, closeStream: false);
        return SettledBytes.Of(stream.ToArray());
    }

    public void Dispose()
    {
        graphics?.Dispose();
        document.Dispose();
    }

    private bool Fits(string text, XFont font, double width) =>
        Page.MeasureString(text, font).Width <= width;
}
