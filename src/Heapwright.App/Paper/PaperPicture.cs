using Heapwright.App.Drawings;
using PdfSharp.Drawing;

namespace Heapwright.App.Paper;

/// <summary>Draws a heap picture on paper, from the same layout as the SVG.</summary>
internal static class PaperPicture
{
    /// <summary>Draws the picture with its top left corner at a place.</summary>
    /// <param name="page">The page.</param>
    /// <param name="picture">The picture.</param>
    /// <param name="x">Points from the left.</param>
    /// <param name="y">Points from the top.</param>
    /// <param name="scale">Points per unit of the picture.</param>
    public static void Draw(XGraphics page, HeapPicture picture, double x, double y, double scale)
    {
        var state = page.Save();
        page.TranslateTransform(x, y);
        page.ScaleTransform(scale);
        foreach (var item in picture.Items)
        {
            Draw(page, item);
        }

        page.Restore(state);
    }

    /// <summary>Fills a square with a pattern, as beside a layer in a list.</summary>
    public static void Swatch(XGraphics page, PatternKind kind, double x, double y, double side)
    {
        var state = page.Save();
        page.TranslateTransform(x, y);
        var scale = side / 30;
        page.ScaleTransform(scale);
        Fill(page, new PictureItem.Area([0, 0, 30, 0, 30, 30, 0, 30], kind, null));
        page.Restore(state);
        page.DrawRectangle(new XPen(XColors.Black, 0.6), x, y, side, side);
    }

    private static void Draw(XGraphics page, PictureItem item)
    {
        switch (item)
        {
            case PictureItem.Area area:
                Fill(page, area);
                break;
            case PictureItem.Block block:
                page.DrawPath(
                    new XSolidBrush(Colour(block.Tone)),
                    PathOf(block.Points.AsSpan(), true)
                );
                break;
            case PictureItem.Stroke stroke:
                Draw(page, stroke);
                break;
            case PictureItem.Label label:
                page.DrawString(
                    label.Text,
                    new XFont(
                        EmbeddedFonts.Family,
                        label.Size,
                        label.Bold ? XFontStyleEx.Bold : XFontStyleEx.Regular
                    ),
                    new XSolidBrush(Colour(label.Tone)),
                    new XPoint(label.X, label.Y),
                    label.Align switch
                    {
                        < 0 => XStringFormats.BaseLineLeft,
                        0 => XStringFormats.BaseLineCenter,
                        _ => XStringFormats.BaseLineRight,
                    }
                );
                break;
            case PictureItem.Plate plate:
                page.DrawRoundedRectangle(
                    new XPen(Colour(PictureTone.OnWhite), 1),
                    XBrushes.White,
                    plate.X,
                    plate.Y,
                    plate.Width,
                    plate.Height,
                    plate.Height,
                    plate.Height
                );
                break;
            case PictureItem.Drop drop:
                Draw(page, drop);
                break;
            default:
                throw new InvalidOperationException("unknown item " + item.GetType().Name);
        }
    }

    private static void Fill(XGraphics page, PictureItem.Area area)
    {
        var outline = PathOf(area.Points.AsSpan(), closed: true);
        var state = page.Save();
        page.IntersectClip(outline);
        var (left, top, right, bottom) = Bounds(area.Points.AsSpan());
        var tile = PatternTile.Of(area.Pattern);
        page.DrawRectangle(
            new XSolidBrush(Colour(tile.Ground)),
            left,
            top,
            right - left,
            bottom - top
        );
        Tile(page, tile, left, top, right, bottom);
        if (area.Over is { } over)
        {
            Tile(page, PatternTile.Of(over), left, top, right, bottom);
        }

        page.Restore(state);
    }

    // The tiles hang on the origin of the picture, as in SVG, so that layers of one stuff run on.
    private static void Tile(
        XGraphics page,
        PatternTile tile,
        double left,
        double top,
        double right,
        double bottom
    )
    {
        var ink = Colour(tile.Ink);
        for (var y = Math.Floor(top / tile.Height) * tile.Height; y < bottom; y += tile.Height)
        {
            for (var x = Math.Floor(left / tile.Width) * tile.Width; x < right; x += tile.Width)
            {
                foreach (var mark in tile.Marks)
                {
                    Draw(page, mark, ink, x, y);
                }
            }
        }
    }

    private static void Draw(XGraphics page, PatternMark mark, XColor ink, double x, double y)
    {
        if (mark.IsDot)
        {
            var r = mark.Width;
            page.DrawEllipse(
                new XSolidBrush(ink),
                x + mark.Points[0] - r,
                y + mark.Points[1] - r,
                2 * r,
                2 * r
            );
            return;
        }

        var points = new double[mark.Points.Length];
        for (var i = 0; i < points.Length; i += 2)
        {
            points[i] = mark.Points[i] + x;
            points[i + 1] = mark.Points[i + 1] + y;
        }

        var path = PathOf(points, mark.Closed);
        if (mark.Filled)
        {
            page.DrawPath(new XSolidBrush(ink), path);
        }
        else
        {
            page.DrawPath(new XPen(ink, mark.Width) { LineCap = XLineCap.Round }, path);
        }
    }

    private static void Draw(XGraphics page, PictureItem.Stroke stroke)
    {
        var path = PathOf(stroke.Points.AsSpan(), closed: false);
        var pen = new XPen(Colour(stroke.Tone), stroke.Width) { LineJoin = XLineJoin.Round };
        if (stroke.Dashed)
        {
            page.DrawPath(new XPen(XColors.White, stroke.Width + 1.6), path);
            pen.DashPattern = [4, 2.5];
        }

        page.DrawPath(pen, path);
    }

    private static void Draw(XGraphics page, PictureItem.Drop drop)
    {
        var (x, y, r) = (drop.X, drop.Y, drop.Size / 2);
        var path = new XGraphicsPath();
        path.AddBezier(
            x,
            y - r,
            x + (0.35 * r),
            y - (0.4 * r),
            x + (0.8 * r),
            y,
            x + (0.75 * r),
            y + (0.35 * r)
        );
        path.AddBezier(
            x + (0.75 * r),
            y + (0.35 * r),
            x + (0.7 * r),
            y + (1.15 * r),
            x - (0.7 * r),
            y + (1.15 * r),
            x - (0.75 * r),
            y + (0.35 * r)
        );
        path.AddBezier(
            x - (0.75 * r),
            y + (0.35 * r),
            x - (0.8 * r),
            y,
            x - (0.35 * r),
            y - (0.4 * r),
            x,
            y - r
        );
        path.CloseFigure();
        page.DrawPath(new XSolidBrush(Colour(PictureTone.Water)), path);
    }

    private static XGraphicsPath PathOf(ReadOnlySpan<double> points, bool closed)
    {
        var path = new XGraphicsPath();
        var all = new XPoint[points.Length / 2];
        for (var i = 0; i < all.Length; i++)
        {
            all[i] = new XPoint(points[2 * i], points[(2 * i) + 1]);
        }

        if (closed)
        {
            path.AddPolygon(all);
        }
        else
        {
            path.AddLines(all);
        }

        return path;
    }

    private static (double Left, double Top, double Right, double Bottom) Bounds(
        ReadOnlySpan<double> points
    )
    {
        var (left, top) = (double.MaxValue, double.MaxValue);
        var (right, bottom) = (double.MinValue, double.MinValue);
        for (var i = 0; i < points.Length; i += 2)
        {
            left = Math.Min(left, points[i]);
            right = Math.Max(right, points[i]);
            top = Math.Min(top, points[i + 1]);
            bottom = Math.Max(bottom, points[i + 1]);
        }

        return (left, top, right, bottom);
    }

    private static XColor Colour(PictureTone tone) => Colour(SvgColours.Of(tone, SvgUse.File));

    private static XColor Colour(string hex) =>
        XColor.FromArgb(
            Convert.ToInt32(hex[1..3], 16),
            Convert.ToInt32(hex[3..5], 16),
            Convert.ToInt32(hex[5..7], 16)
        );
}
