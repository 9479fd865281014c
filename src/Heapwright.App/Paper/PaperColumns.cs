using PdfSharp.Drawing;

namespace Heapwright.App.Paper;

/// <summary>Sets blocks in two columns, on as many pages as they need.</summary>
internal sealed class PaperColumns(PaperPages pages, double size)
{
    private const double Gap = 22;
    private readonly XFont plain = PaperPages.Plain(size);
    private readonly XFont bold = PaperPages.Bold(size + 1.7);

    private double ColumnWidth => (pages.Right - pages.Left - Gap) / 2;

    private double Leading => size * 1.32;

    public void Print(IEnumerable<PaperBlock> blocks)
    {
        var lines = blocks.Where(b => b.Texts.Count > 0).SelectMany(Set).ToList();
        var from = 0;
        while (from < lines.Count)
        {
            if (pages.Bottom - pages.Y < 8 * Leading)
            {
                pages.NewPage();
            }

            var top = pages.Y;
            var room = pages.Bottom - top;
            // All that is left in two even columns if it fits, otherwise the columns full.
            var rest = lines.Skip(from).Sum(l => l.Height);
            var target = Math.Min(room, (rest / 2) + (2 * Leading));
            var next = Column(lines, from, pages.Left, top, target);
            var lowest = pages.Y;
            next = Column(lines, next, pages.Left + ColumnWidth + Gap, top, room);
            pages.Y = Math.Max(lowest, pages.Y);
            from = next;
            if (from < lines.Count)
            {
                pages.NewPage();
            }
        }
    }

    private int Column(List<Line> lines, int from, double x, double top, double room)
    {
        pages.Y = top;
        var i = from;
        while (i < lines.Count)
        {
            var line = lines[i];
            var needed = line.Height + (line.KeepWithNext && i + 1 < lines.Count ? 2 * Leading : 0);
            if (pages.Y + needed > top + room && pages.Y > top)
            {
                break;
            }

            // Space above a heading is lost at the top of a column.
            pages.Y += pages.Y > top ? line.Above : 0;
            if (line.Bullet)
            {
                pages.Page.DrawEllipse(XBrushes.Black, x, pages.Y + (size * 0.55), 2.6, 2.6);
            }

            pages.Text(
                line.Text,
                line.Heading ? bold : plain,
                x + (line.Heading ? 0 : 8),
                pages.Y + size
            );
            pages.Y += line.Height - line.Above;
            i++;
        }

        return i;
    }

    private IEnumerable<Line> Set(PaperBlock block)
    {
        yield return new Line(
            block.Heading,
            9 + (Leading * 1.25),
            9,
            Heading: true,
            Bullet: false,
            KeepWithNext: true
        );
        foreach (var text in block.Texts)
        {
            var first = true;
            foreach (var line in pages.Lines(text, plain, ColumnWidth - 8))
            {
                yield return new Line(
                    line,
                    Leading + (first ? 1.5 : 0),
                    first ? 1.5 : 0,
                    Heading: false,
                    Bullet: first,
                    KeepWithNext: false
                );
                first = false;
            }
        }
    }

    private sealed record Line(
        string Text,
        double Height,
        double Above,
        bool Heading,
        bool Bullet,
        bool KeepWithNext
    );
}
