using PdfSharp.Drawing;

namespace Heapwright.App.Paper;

/// <summary>Sets blocks in two columns, on as few pages as they need.</summary>
internal sealed class PaperColumns
{
    private const double Gap = 22;

    // A paragraph of so many lines is not broken over two columns.
    private const int Whole = 7;

    private readonly PaperPages pages;
    private readonly double size;
    private readonly XFont plain;
    private readonly XFont bold;
    private readonly List<Line> lines;

    private PaperColumns(PaperPages pages, double size, IEnumerable<PaperBlock> blocks)
    {
        this.pages = pages;
        this.size = size;
        plain = PaperPages.Plain(size);
        bold = PaperPages.Bold(size + 1.7);
        lines = [.. blocks.Where(b => b.Texts.Count > 0).SelectMany(Set)];
    }

    private double ColumnWidth => (pages.Right - pages.Left - Gap) / 2;

    private double Leading => size * 1.32;

    /// <summary>Prints blocks with the largest of the sizes that needs the fewest pages.</summary>
    /// <param name="pages">The pages; printing begins where they stand.</param>
    /// <param name="sizes">Heights of the letters, largest first.</param>
    /// <param name="blocks">The blocks.</param>
    public static void Print(PaperPages pages, double[] sizes, IReadOnlyList<PaperBlock> blocks)
    {
        var tried = sizes.Select(s => new PaperColumns(pages, s, blocks)).ToList();
        tried.MinBy(t => t.Run(draw: false))!.Run(draw: true);
    }

    // Returns how many further pages there are.
    private int Run(bool draw)
    {
        var top = pages.Y;
        var turned = 0;
        if (pages.Bottom - top < 5 * Leading)
        {
            top = Turn(draw, ref turned);
        }

        var from = 0;
        while (from < lines.Count)
        {
            var room = pages.Bottom - top;

            // All that is left in two even columns if it fits, otherwise the columns full.
            var (next, left, right) = (from, 0.0, 0.0);
            var even = lines.Skip(from).Sum(l => l.Height) / 2;
            for (var target = even; ; target += 2 * Leading)
            {
                var height = Math.Min(room, target);
                (var middle, left) = Column(from, pages.Left, top, height, draw: false);
                (next, right) = Column(middle, pages.Left, top, height, draw: false);
                if (next >= lines.Count || height >= room)
                {
                    if (draw)
                    {
                        Column(from, pages.Left, top, height, draw: true);
                        Column(middle, pages.Left + ColumnWidth + Gap, top, height, draw: true);
                    }

                    break;
                }
            }

            from = next;
            if (draw)
            {
                pages.Y = Math.Max(left, right);
            }

            if (from < lines.Count)
            {
                top = Turn(draw, ref turned);
            }
        }

        return turned;
    }

    private double Turn(bool draw, ref int turned)
    {
        turned++;
        if (draw)
        {
            pages.NewPage();
        }

        return PaperPages.Margin;
    }

    private (int Next, double Y) Column(int from, double x, double top, double room, bool draw)
    {
        var y = top;
        var i = from;
        while (i < lines.Count)
        {
            var line = lines[i];

            // Something always goes in, or a paragraph higher than a page would never be set.
            if (y + line.Together > top + room + 0.01 && y > top)
            {
                break;
            }

            // Space above is lost at the top of a column.
            y += y > top ? line.Above : 0;
            if (draw)
            {
                Draw(line, x, y);
            }

            y += line.Height - line.Above;
            i++;
        }

        return (i, y);
    }

    private void Draw(Line line, double x, double y)
    {
        if (line.Bullet)
        {
            pages.Page.DrawEllipse(XBrushes.Black, x, y + (size * 0.55), 2.6, 2.6);
        }

        var indent = line.Heading ? 0 : 8;
        pages.Text(line.Text, line.Heading ? bold : plain, x + indent, y + size);
    }

    private List<Line> Set(PaperBlock block)
    {
        var set = new List<Line>();
        foreach (var text in block.Texts)
        {
            var wrapped = pages.Lines(text, plain, ColumnWidth - 8);
            for (var i = 0; i < wrapped.Count; i++)
            {
                var above = i == 0 ? 1.5 : 0;
                var rest = i == 0 ? (wrapped.Count <= Whole ? wrapped.Count : 2) : 1;
                set.Add(
                    new Line(wrapped[i], Leading + above, above, (rest * Leading) + above)
                    {
                        Bullet = i == 0,
                    }
                );
            }
        }

        const double Above = 9;
        var height = Above + (Leading * 1.25);
        set.Insert(
            0,
            new Line(block.Heading, height, Above, height + set[0].Together) { Heading = true }
        );
        return set;
    }

    /// <summary>A line as it is set.</summary>
    /// <param name="Text">The text.</param>
    /// <param name="Height">Its height with the space above it.</param>
    /// <param name="Above">The space above it.</param>
    /// <param name="Together">The height of what must stay in one column with it, itself included.</param>
    private sealed record Line(string Text, double Height, double Above, double Together)
    {
        public bool Heading { get; init; }

        public bool Bullet { get; init; }
    }
}
