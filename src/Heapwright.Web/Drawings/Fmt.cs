using System.Globalization;

namespace Heapwright.Web.Drawings;

/// <summary>Numbers as SVG needs them: a point, two decimals, whatever the reader's language.</summary>
public static class Fmt
{
    /// <summary>A coordinate.</summary>
    /// <param name="value">The coordinate.</param>
    public static string N(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
