using Heapwright.Core.Quantities;

namespace Heapwright.Core.Diagnosis;

/// <summary>
/// What the simulation expects of the core of a good heap, by volume, air and age; read between the rows by straight
/// lines in the logarithm of volume and age, and in the air.
/// </summary>
public sealed class ExpectedHeat
{
    private readonly double[] volumes;
    private readonly double[] airs;
    private readonly double[] days;
    private readonly Spread?[] cores;

    /// <summary>Makes the table of its rows.</summary>
    /// <param name="rows">One row for each volume, air and day.</param>
    /// <exception cref="ArgumentException">A combination is missing or stands twice.</exception>
    public ExpectedHeat(IReadOnlyList<ExpectedHeatRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        volumes = Steps(rows, r => r.Volume);
        airs = Steps(rows, r => r.Air);
        days = Steps(rows, r => r.Day);
        cores = new Spread?[volumes.Length * airs.Length * days.Length];
        foreach (var row in rows)
        {
            var at = At(Place(volumes, row.Volume), Place(airs, row.Air), Place(days, row.Day));
            cores[at] = cores[at] is null ? row.Core : throw Incomplete(nameof(rows));
        }

        if (rows.Count != cores.Length)
        {
            throw Incomplete(nameof(rows));
        }
    }

    /// <summary>The core of a good heap, °C; null outside the ages of the table.</summary>
    /// <param name="volume">m³; taken as the nearest of the table where it lies outside.</param>
    /// <param name="airCelsius">The air, °C; likewise.</param>
    /// <param name="day">Days since building.</param>
    public Spread? At(double volume, double airCelsius, double day)
    {
        if (day < days[0] || day > days[^1])
        {
            return null;
        }

        var (v, vPart) = Between(volumes, volume, Math.Log);
        var (a, aPart) = Between(airs, airCelsius, x => x);
        var (d, dPart) = Between(days, day, Math.Log);
        var (low, typical, high) = (0.0, 0.0, 0.0);
        for (var corner = 0; corner < 8; corner++)
        {
            var (dv, da, dd) = (corner & 1, (corner >> 1) & 1, corner >> 2);
            var weight =
                (dv == 1 ? vPart : 1 - vPart)
                * (da == 1 ? aPart : 1 - aPart)
                * (dd == 1 ? dPart : 1 - dPart);
            if (weight > 0)
            {
                var row = cores[At(v + dv, a + da, d + dd)]!.Value;
                low += weight * row.Low;
                typical += weight * row.Typical;
                high += weight * row.High;
            }
        }

        return Spread.Of(low, typical, high);
    }

    /// <summary>Where a reading lies: <c>far_below</c>, <c>below</c>, <c>within</c> or <c>above</c>.</summary>
    /// <param name="expected">What is expected, °C.</param>
    /// <param name="celsius">What was read, °C.</param>
    public static string Place(Spread expected, double celsius)
    {
        const double LowerQuarter = 0.4; // of the way from the low end to the middle
        return celsius < expected.Low ? "far_below"
            : celsius < expected.Low + (LowerQuarter * (expected.Typical - expected.Low)) ? "below"
            : celsius <= expected.High ? "within"
            : "above";
    }

    private int At(int volume, int air, int day) =>
        (((volume * airs.Length) + air) * days.Length) + day;

    private static ArgumentException Incomplete(string parameter) =>
        new("one row for each volume, air and day", parameter);

    // Every value that occurs, ascending.
    private static double[] Steps(
        IReadOnlyList<ExpectedHeatRow> rows,
        Func<ExpectedHeatRow, double> value
    )
    {
        var (steps, count) = (new double[rows.Count], 0);
        foreach (var row in rows)
        {
            var (next, at) = (value(row), count);
            while (at > 0 && steps[at - 1] > next)
            {
                at--;
            }

            if (at > 0 && steps[at - 1] == next)
            {
                continue;
            }

            Array.Copy(steps, at, steps, at + 1, count - at);
            steps[at] = next;
            count++;
        }

        var all = new double[count];
        Array.Copy(steps, all, count);
        return all;
    }

    private static int Place(double[] steps, double value)
    {
        var at = 0;
        while (steps[at] != value)
        {
            at++;
        }

        return at;
    }

    private static (int At, double Part) Between(
        double[] values,
        double value,
        Func<double, double> scale
    )
    {
        var held = Math.Clamp(value, values[0], values[^1]);
        var at = 0;
        while (at < values.Length - 2 && values[at + 1] < held)
        {
            at++;
        }

        var (low, high) = (scale(values[at]), scale(values[at + 1]));
        return (at, (scale(held) - low) / (high - low));
    }
}
