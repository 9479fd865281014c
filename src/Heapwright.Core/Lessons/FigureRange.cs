using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Lessons;

/// <summary>Where a figure lies in nine cases of ten; infinite where a day does not come within the time looked at.</summary>
/// <param name="Low">One in twenty lies below.</param>
/// <param name="Typical">The middle.</param>
/// <param name="High">One in twenty lies above.</param>
/// <param name="Reached">The share of the cases in which it comes at all, 0 to 1.</param>
public readonly record struct FigureRange(double Low, double Typical, double High, double Reached)
{
    /// <summary>The range over members.</summary>
    /// <param name="values">Shape [member]; positive infinity for a day that does not come.</param>
    public static FigureRange Of(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Select(v => double.IsNaN(v) ? double.PositiveInfinity : v)];
        Array.Sort(sorted);
        double At(double share)
        {
            var value = Percentiles.At(sorted, share);
            return double.IsNaN(value) ? double.PositiveInfinity : value;
        }

        return new FigureRange(
            At(0.05),
            At(0.5),
            At(0.95),
            (double)sorted.Count(double.IsFinite) / sorted.Length
        );
    }

    /// <summary>Where a value lies; one on the very edge is inside.</summary>
    /// <param name="value">The value.</param>
    public LessonVerdict Against(double value) =>
        value < Low ? LessonVerdict.Lower
        : value > High ? LessonVerdict.Higher
        : LessonVerdict.Inside;
}
