using System.Globalization;
using System.Text;
using Heapwright.App.Texts;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>Figures as a person reads them: no more digits than are known.</summary>
public static class Figures
{
    /// <summary>A value with its range, such as <c>32 (24–41)</c>; one figure where it is exact.</summary>
    /// <param name="value">The value.</param>
    /// <param name="culture">The number format; that of the language that is being read if null.</param>
    public static string Range(Spread value, CultureInfo? culture = null)
    {
        if (value.IsExact)
        {
            return One(value.Typical, culture);
        }

        // A digit that is lost in the range says nothing.
        var width = value.High - value.Low;
        var format =
            width >= 5 ? "0"
            : width >= 0.5 ? "0.0"
            : width >= 0.05 ? "0.00"
            : "0.000";
        string Show(double x) => x.ToString(format, culture ?? Languages.Now);
        return $"{Show(value.Typical)} ({Show(value.Low)}–{Show(value.High)})";
    }

    /// <summary>A number with about three figures.</summary>
    /// <param name="value">The number.</param>
    /// <param name="culture">The number format; that of the language that is being read if null.</param>
    public static string One(double value, CultureInfo? culture = null)
    {
        var size = Math.Abs(value);
        var format =
            size >= 100 ? "0"
            : size >= 10 ? "0.#"
            : size >= 1 ? "0.##"
            : "0.###";
        return value.ToString(format, culture ?? Languages.Now);
    }

    /// <summary>A number with two digits, where no more is known.</summary>
    /// <param name="value">The number, above 0.</param>
    internal static double TwoDigits(double value)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(value)) - 1);
        return Math.Round(value / step) * step;
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
