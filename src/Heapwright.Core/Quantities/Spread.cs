using System.Globalization;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Quantities;

/// <summary>
/// A value that may not be known exactly: its 5th, 50th and 95th percentile. With the three equal it is exact and
/// stays exact to the bit in everything computed from it.
/// </summary>
/// <remarks>
/// Between and beyond the three points the value is distributed as a normal variable in two pieces on the scale named
/// by <see cref="SpreadScale"/>: the three percentiles are kept exactly whatever the scale.
/// </remarks>
public readonly record struct Spread
{
    private Spread(double low, double typical, double high)
    {
        Low = low;
        Typical = typical;
        High = high;
    }

    /// <summary>The 5th percentile.</summary>
    public double Low { get; }

    /// <summary>The 50th percentile.</summary>
    public double Typical { get; }

    /// <summary>The 95th percentile.</summary>
    public double High { get; }

    /// <summary>Whether the value is known exactly.</summary>
    public bool IsExact => Low == Typical && Typical == High;

    /// <summary>A value known exactly.</summary>
    /// <param name="value">A finite number.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Spread Exact(double value) => Of(value, value, value);

    /// <summary>A value known by three percentiles.</summary>
    /// <param name="low">The 5th percentile.</param>
    /// <param name="typical">The 50th percentile.</param>
    /// <param name="high">The 95th percentile.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite, or they are not in ascending order.</exception>
    public static Spread Of(double low, double typical, double high)
    {
        if (!double.IsFinite(low) || !double.IsFinite(typical) || !double.IsFinite(high))
        {
            throw new ArgumentOutOfRangeException(
                nameof(typical),
                typical,
                "finite numbers are needed"
            );
        }

        if (low > typical || typical > high)
        {
            throw new ArgumentOutOfRangeException(
                nameof(typical),
                typical,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"low {low}, typical {typical}, high {high} are not in ascending order"
                )
            );
        }

        return new Spread(low, typical, high);
    }

    /// <summary>The percentiles of a sample.</summary>
    /// <param name="sample">Shape [point], at least one finite value.</param>
    public static Spread OfSample(ReadOnlySpan<double> sample)
    {
        var (low, typical, high) = Percentiles.Of(sample);
        return Of(low, typical, high);
    }

    /// <summary>The value at each point of a sample set.</summary>
    /// <param name="points">Shape [point]: coordinates strictly between 0 and 1.</param>
    /// <param name="scale">The scale on which the two pieces are normal.</param>
    /// <returns>Shape [point], in the unit of this value.</returns>
    public double[] Sample(ReadOnlySpan<double> points, SpreadScale scale)
    {
        var values = new double[points.Length];
        if (IsExact)
        {
            Array.Fill(values, Typical);
            return values;
        }

        scale = Usable(scale);
        var (below, middle, above) = Pieces(scale);
        for (var i = 0; i < values.Length; i++)
        {
            var z = NormalDistribution.Quantile(points[i]);
            values[i] = From(middle + (z * (z < 0 ? below : above)), scale);
        }

        return values;
    }

    /// <summary>The value that lies a number of standard deviations from the typical one, on the scale.</summary>
    /// <param name="z">The standard score; 0 gives the typical value, ±1.645 the ends.</param>
    /// <param name="scale">The scale on which the two pieces are normal.</param>
    public double AtScore(double z, SpreadScale scale)
    {
        if (IsExact)
        {
            return Typical;
        }

        scale = Usable(scale);
        var (below, middle, above) = Pieces(scale);
        return From(middle + (z * (z < 0 ? below : above)), scale);
    }

    /// <summary>The inverse of <see cref="AtScore"/>.</summary>
    /// <param name="value">A value in the unit of this one.</param>
    /// <param name="scale">The scale on which the two pieces are normal.</param>
    /// <returns>The standard score; infinite where the value cannot occur.</returns>
    public double ScoreOf(double value, SpreadScale scale)
    {
        var score = 0.0;
        ScoresOf([value], scale, new Span<double>(ref score));
        return score;
    }

    /// <summary>The standard scores of many values, as <see cref="ScoreOf"/> gives them.</summary>
    /// <param name="values">Shape [point], in the unit of this one.</param>
    /// <param name="scale">The scale on which the two pieces are normal.</param>
    /// <param name="scores">Shape [point]: receives the scores.</param>
    public void ScoresOf(ReadOnlySpan<double> values, SpreadScale scale, Span<double> scores)
    {
        scale = Usable(scale);
        var (below, middle, above) = Pieces(scale);
        for (var i = 0; i < values.Length; i++)
        {
            var distance = To(values[i], scale) - middle;
            scores[i] = distance == 0 ? 0 : distance / (distance < 0 ? below : above);
        }
    }

    /// <summary>This value times a number.</summary>
    /// <param name="factor">A finite number, 0 or above.</param>
    public Spread Times(double factor)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(factor);
        return Of(Low * factor, Typical * factor, High * factor);
    }

    /// <inheritdoc/>
    public override string ToString() =>
        IsExact
            ? Typical.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{Low} … {Typical} … {High}");

    // A logarithm or logit needs room on both sides; where a bound is touched the plain scale with a stop is used.
    private SpreadScale Usable(SpreadScale scale) =>
        scale switch
        {
            SpreadScale.Positive when Low > 0 => SpreadScale.Positive,
            SpreadScale.Percent when Low > 0 && High < 100 => SpreadScale.Percent,
            SpreadScale.Positive => SpreadScale.PlainPositive,
            SpreadScale.Percent => SpreadScale.PlainPercent,
            _ => scale,
        };

    private (double Below, double Middle, double Above) Pieces(SpreadScale scale)
    {
        var middle = To(Typical, scale);
        return (
            (middle - To(Low, scale)) / NormalDistribution.Z95,
            middle,
            (To(High, scale) - middle) / NormalDistribution.Z95
        );
    }

    private static double To(double value, SpreadScale scale) =>
        scale switch
        {
            SpreadScale.Positive => Math.Log(value),
            SpreadScale.Percent => Math.Log(value / (100 - value)),
            _ => value,
        };

    private static double From(double value, SpreadScale scale) =>
        scale switch
        {
            SpreadScale.Positive => Math.Exp(value),
            SpreadScale.Percent => 100 / (1 + Math.Exp(-value)),
            SpreadScale.PlainPercent => Math.Clamp(value, 0, 100),
            _ => Math.Max(value, 0),
        };
}
