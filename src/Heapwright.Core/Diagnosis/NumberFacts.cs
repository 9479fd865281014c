using System.Globalization;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Diagnosis;

/// <summary>
/// Facts that are numbers. The words of such a field are a letter and the number they stand for, such as <c>d12</c> for
/// twelve days; a number between two words belongs to both in part.
/// </summary>
public static class NumberFacts
{
    /// <summary>A fact of an exact number.</summary>
    /// <param name="field">The field.</param>
    /// <param name="value">The number, in the unit of the field.</param>
    /// <param name="inLogs">Whether the field is even on a scale of logarithms.</param>
    public static ChoiceFact Of(SignField field, double value, bool inLogs)
    {
        ArgumentNullException.ThrowIfNull(field);
        var shares = new double[field.Words.Length];
        Add(field, value, 1, inLogs, shares);
        return new ChoiceFact(field, Said(value), shares);
    }

    /// <summary>A fact of a number that is not known exactly.</summary>
    /// <param name="field">The field.</param>
    /// <param name="value">The number, in the unit of the field.</param>
    /// <param name="inLogs">Whether the field is even on a scale of logarithms.</param>
    public static ChoiceFact Of(SignField field, Spread value, bool inLogs)
    {
        ArgumentNullException.ThrowIfNull(field);
        const int Points = 21;
        var shares = new double[field.Words.Length];
        for (var p = 0; p < Points; p++)
        {
            var z = -2 + (4.0 * p / (Points - 1));
            var weight = Math.Exp(-0.5 * z * z);
            // The outer percentiles lie 1.645 standard deviations away.
            var toward = z < 0 ? value.Typical - value.Low : value.High - value.Typical;
            Add(field, value.Typical + (z / 1.645 * toward), weight, inLogs, shares);
        }

        var sum = 0.0;
        foreach (var share in shares)
        {
            sum += share;
        }

        for (var w = 0; w < shares.Length; w++)
        {
            shares[w] /= sum;
        }

        return new ChoiceFact(field, Said(value.Typical), shares);
    }

    private static void Add(
        SignField field,
        double value,
        double weight,
        bool inLogs,
        double[] shares
    )
    {
        var last = field.Words.Length - 1;
        var at = inLogs ? Math.Log(Math.Max(value, 1e-3)) : value;
        var upper = 0;
        while (upper <= last && Centre(field.Words[upper], inLogs) < at)
        {
            upper++;
        }

        if (upper == 0 || upper > last)
        {
            shares[Math.Min(upper, last)] += weight;
            return;
        }

        var (low, high) = (
            Centre(field.Words[upper - 1], inLogs),
            Centre(field.Words[upper], inLogs)
        );
        var part = (at - low) / (high - low);
        shares[upper - 1] += weight * (1 - part);
        shares[upper] += weight * part;
    }

    private static double Centre(string word, bool inLogs)
    {
        var number = double.Parse(word.AsSpan(1), CultureInfo.InvariantCulture);
        return inLogs ? Math.Log(number) : number;
    }

    private static string Said(double value) =>
        value.ToString(Math.Abs(value) < 10 ? "0.##" : "0", CultureInfo.InvariantCulture);
}
