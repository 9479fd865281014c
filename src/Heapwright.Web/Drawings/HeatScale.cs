namespace Heapwright.Web.Drawings;

/// <summary>
/// The colours of warmth: each step darker than the one before, so that they can be told apart in grey, in full sun and by
/// people who see few colours. A test holds them to it.
/// </summary>
public static class HeatScale
{
    /// <summary>Where a colour begins, °C; the first holds for all below the first of these.</summary>
    public static IReadOnlyList<double> Levels { get; } = [15, 25, 35, 45, 55, 65, 75];

    /// <summary>The colours, one more than levels.</summary>
    public static IReadOnlyList<string> Colours { get; } =
    ["#e8f1f5", "#d2dcc0", "#e0c06a", "#dca742", "#d2862f", "#b9571e", "#8c3116", "#571310"];

    /// <summary>From here on it is the heat that kills, °C.</summary>
    public const double Killing = 55;
}
