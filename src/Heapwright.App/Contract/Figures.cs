using System.Globalization;
using System.Text;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>Figures as a person reads them: no more digits than are known.</summary>
public static class Figures
{
    /// <summary>A value with its range, such as <c>32 (24–41)</c>; one figure where it is exact.</summary>
    /// <param name="value">The value.</param>
    /// <param name="culture">The number format; a point if null.</param>
    public static string Range(Spread value, CultureInfo? culture = null) =>
        value.IsExact
            ? One(value.Typical, culture)
            : $"{One(value.Typical, culture)} ({One(value.Low, culture)}–{One(value.High, culture)})";

    /// <summary>A number with about three figures.</summary>
    /// <param name="value">The number.</param>
    /// <param name="culture">The number format; a point if null.</param>
    public static string One(double value, CultureInfo? culture = null)
    {
        var size = Math.Abs(value);
        var format =
            size >= 100 ? "0"
            : size >= 10 ? "0.#"
            : size >= 1 ? "0.##"
            : "0.###";
        return value.ToString(format, culture ?? CultureInfo.InvariantCulture);
    }

    internal static void AppendList(
        StringBuilder text,
        string heading,
        IReadOnlyCollection<string> lines
    )
    {
        if (lines.Count == 0)
        {
            return;
        }

        text.AppendLine().AppendLine(heading);
        foreach (var line in lines)
        {
            text.Append("  - ").AppendLine(line);
        }
    }
}
