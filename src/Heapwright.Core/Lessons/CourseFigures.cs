namespace Heapwright.Core.Lessons;

/// <summary>Figures of a course of temperatures, by straight lines between its points; the same for what was read and what was computed.</summary>
public static class CourseFigures
{
    /// <summary>From here on heap counts as hot, °C.</summary>
    public const double Hot = 55;

    /// <summary>Below this it counts as cooled, °C.</summary>
    public const double Cooled = 40;

    /// <summary>A figure of a course.</summary>
    /// <param name="figure">Which.</param>
    /// <param name="days">Shape [point]: days since building, ascending, at least one.</param>
    /// <param name="celsius">Shape [point]: °C.</param>
    /// <returns>°C or days; positive infinity for a day that does not come within the course.</returns>
    public static double Of(
        HeapFigure figure,
        ReadOnlySpan<double> days,
        ReadOnlySpan<double> celsius
    ) =>
        figure switch
        {
            HeapFigure.Peak => Peak(celsius),
            HeapFigure.First55 => FirstAbove(days, celsius),
            HeapFigure.DaysAt55 => DaysAbove(days, celsius),
            _ => BelowForGood(days, celsius),
        };

    private static double Peak(ReadOnlySpan<double> celsius)
    {
        var peak = double.NegativeInfinity;
        foreach (var c in celsius)
        {
            peak = Math.Max(peak, c);
        }

        return peak;
    }

    private static double FirstAbove(ReadOnlySpan<double> days, ReadOnlySpan<double> celsius)
    {
        for (var i = 0; i < days.Length; i++)
        {
            if (celsius[i] >= Hot)
            {
                return i == 0 ? days[0] : Crossing(days, celsius, i, Hot);
            }
        }

        return double.PositiveInfinity;
    }

    private static double DaysAbove(ReadOnlySpan<double> days, ReadOnlySpan<double> celsius)
    {
        var sum = 0.0;
        for (var i = 1; i < days.Length; i++)
        {
            var (a, b) = (celsius[i - 1], celsius[i]);
            var length = days[i] - days[i - 1];
            sum +=
                a >= Hot && b >= Hot ? length
                : a < Hot && b < Hot ? 0
                : length * (Math.Max(a, b) - Hot) / Math.Abs(b - a);
        }

        return sum;
    }

    private static double BelowForGood(ReadOnlySpan<double> days, ReadOnlySpan<double> celsius)
    {
        for (var i = days.Length - 1; i >= 0; i--)
        {
            if (celsius[i] >= Cooled)
            {
                return i == days.Length - 1
                    ? double.PositiveInfinity
                    : Crossing(days, celsius, i + 1, Cooled);
            }
        }

        return days[0];
    }

    // Where the line to a point passes a level.
    private static double Crossing(
        ReadOnlySpan<double> days,
        ReadOnlySpan<double> celsius,
        int to,
        double level
    ) =>
        days[to - 1]
        + ((days[to] - days[to - 1]) * (level - celsius[to - 1]) / (celsius[to] - celsius[to - 1]));
}
