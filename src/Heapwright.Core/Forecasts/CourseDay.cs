using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Forecasts;

/// <summary>A day of a forecast: shares of the members below these temperatures of the core.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="P05">One in twenty lies below, °C.</param>
/// <param name="P25">One in four lies below, °C.</param>
/// <param name="P50">Half lie below, °C.</param>
/// <param name="P75">Three in four lie below, °C.</param>
/// <param name="P95">Nineteen in twenty lie below, °C.</param>
public sealed record CourseDay(
    double Day,
    double P05,
    double P25,
    double P50,
    double P75,
    double P95
)
{
    /// <summary>A day from what its members are.</summary>
    /// <param name="day">Days since building.</param>
    /// <param name="members">Shape [member]: the core, °C; at least one, none NaN.</param>
    public static CourseDay Of(double day, IEnumerable<double> members)
    {
        double[] sorted = [.. members.Order()];
        return new CourseDay(
            day,
            Percentiles.At(sorted, 0.05),
            Percentiles.At(sorted, 0.25),
            Percentiles.At(sorted, 0.5),
            Percentiles.At(sorted, 0.75),
            Percentiles.At(sorted, 0.95)
        );
    }

    /// <summary>The day between two others, all figures on straight lines.</summary>
    /// <param name="before">The day before.</param>
    /// <param name="after">The day after.</param>
    /// <param name="day">Days since building, between theirs.</param>
    public static CourseDay Between(CourseDay before, CourseDay after, double day)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var span = after.Day - before.Day;
        var share = span > 0 ? (day - before.Day) / span : 0;
        return new CourseDay(
            day,
            double.Lerp(before.P05, after.P05, share),
            double.Lerp(before.P25, after.P25, share),
            double.Lerp(before.P50, after.P50, share),
            double.Lerp(before.P75, after.P75, share),
            double.Lerp(before.P95, after.P95, share)
        );
    }
}
