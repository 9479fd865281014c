using System.Collections.Immutable;

namespace Heapwright.App.Drawings;

/// <summary>One mark of a pattern tile: a line, an outline, a filled shape or a dot.</summary>
/// <param name="Points">x and y in turn; of a dot its centre alone.</param>
/// <param name="Width">Line width; of a dot its radius.</param>
/// <param name="Closed">Whether the last point is joined to the first.</param>
/// <param name="Filled">Whether it is filled with ink.</param>
public sealed record PatternMark(
    ImmutableArray<double> Points,
    double Width,
    bool Closed,
    bool Filled
)
{
    /// <summary>Whether it is a dot.</summary>
    public bool IsDot => Points.Length == 2;

    internal static PatternMark Line(double width, params double[] points) =>
        new([.. points], width, Closed: false, Filled: false);

    internal static PatternMark Outline(double width, params double[] points) =>
        new([.. points], width, Closed: true, Filled: false);

    internal static PatternMark Shape(params double[] points) =>
        new([.. points], 0, Closed: true, Filled: true);

    internal static PatternMark Dot(double x, double y, double radius) =>
        new([x, y], radius, Closed: true, Filled: true);

    internal static PatternMark Ring(double x, double y, double radius)
    {
        var points = new double[24];
        for (var i = 0; i < 12; i++)
        {
            points[2 * i] = Math.Round(x + (radius * Math.Cos(Math.PI * i / 6)), 2);
            points[(2 * i) + 1] = Math.Round(y + (radius * Math.Sin(Math.PI * i / 6)), 2);
        }

        return Outline(1, points);
    }
}
