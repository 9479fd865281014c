using System.Collections.Immutable;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Diagnosis;

/// <summary>
/// What the simulation expects of the core of a good heap, by volume, air and age; read between the rows by straight
/// lines in the logarithm of volume and age, and in the air.
/// </summary>
public sealed class ExpectedHeat
{
    private readonly ImmutableArray<double> volumes;
    private readonly ImmutableArray<double> airs;
    private readonly ImmutableArray<double> days;
    private readonly Dictionary<(double Volume, double Air, double Day), Spread> rows;

    /// <summary>Makes the table of its rows.</summary>
    /// <param name="rows">One row for each volume, m³, air, °C, and day; the core in °C.</param>
    /// <exception cref="ArgumentException">A combination is missing.</exception>
    public ExpectedHeat(IReadOnlyDictionary<(double Volume, double Air, double Day), Spread> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        this.rows = new(rows);
        volumes = [.. rows.Keys.Select(k => k.Volume).Distinct().Order()];
        airs = [.. rows.Keys.Select(k => k.Air).Distinct().Order()];
        days = [.. rows.Keys.Select(k => k.Day).Distinct().Order()];
        if (rows.Count != volumes.Length * airs.Length * days.Length)
        {
            throw new ArgumentException("a row for each volume, air and day", nameof(rows));
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
                var row = rows[(volumes[v + dv], airs[a + da], days[d + dd])];
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

    private static (int At, double Part) Between(
        ImmutableArray<double> values,
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
