using System.Text;

namespace Heapwright.Web.Drawings;

/// <summary>Lines as SVG paths, with no more points than the eye sees.</summary>
public static class Polyline
{
    /// <summary>The path of a line.</summary>
    /// <param name="points">Its points.</param>
    /// <param name="closed">Whether it comes back to its start.</param>
    public static string Path(IReadOnlyList<(double X, double Y)> points, bool closed)
    {
        ArgumentNullException.ThrowIfNull(points);
        // In tenths, and after the first point as steps: that halves what a page weighs.
        var text = new StringBuilder();
        var (x, y) = (0L, 0L);
        for (var i = 0; i < points.Count; i++)
        {
            var (atX, atY) = (
                (long)Math.Round(points[i].X * 10),
                (long)Math.Round(points[i].Y * 10)
            );
            text.Append(
                    i switch
                    {
                        0 => "M",
                        1 => "l",
                        _ => " ",
                    }
                )
                .Append(Tenths(atX - x))
                .Append(' ')
                .Append(Tenths(atY - y));
            (x, y) = (atX, atY);
        }

        return closed ? text.Append('z').ToString() : text.ToString();
    }

    /// <summary>A line without the points that lie within a distance of the line between others.</summary>
    /// <param name="points">Its points.</param>
    /// <param name="within">The distance.</param>
    public static IReadOnlyList<(double X, double Y)> Simple(
        IReadOnlyList<(double X, double Y)> points,
        double within = 0.4
    )
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count < 3)
        {
            return points;
        }

        var keep = new bool[points.Count];
        keep[0] = keep[^1] = true;
        Mark(points, 0, points.Count - 1, within, keep);
        return [.. points.Where((_, i) => keep[i])];
    }

    private static void Mark(
        IReadOnlyList<(double X, double Y)> points,
        int from,
        int to,
        double within,
        bool[] keep
    )
    {
        var (far, at) = (0.0, -1);
        for (var i = from + 1; i < to; i++)
        {
            var off = Distance(points[i], points[from], points[to]);
            if (off > far)
            {
                (far, at) = (off, i);
            }
        }

        if (at >= 0 && far > within)
        {
            keep[at] = true;
            Mark(points, from, at, within, keep);
            Mark(points, at, to, within, keep);
        }
    }

    private static double Distance(
        (double X, double Y) p,
        (double X, double Y) a,
        (double X, double Y) b
    )
    {
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        var length = (dx * dx) + (dy * dy);
        var along =
            length > 0 ? Math.Clamp((((p.X - a.X) * dx) + ((p.Y - a.Y) * dy)) / length, 0, 1) : 0;
        return Math.Sqrt(
            Math.Pow(p.X - a.X - (along * dx), 2) + Math.Pow(p.Y - a.Y - (along * dy), 2)
        );
    }

    private static string Tenths(long tenths) =>
        (tenths / 10.0).ToString("0.#", System.Globalization.CultureInfo.InvariantCulture);
}
