using System.Globalization;

namespace Heapwright.App.Library;

/// <summary>Reads from data/weather/usual-air.csv how far the air of one year may lie off what is usual.</summary>
public static class UsualAirReader
{
    private static readonly Lazy<Dictionary<string, double>> Figures = new(() =>
        DataFiles
            .Csv("usual-air.csv")
            .ToDictionary(
                row => row["figure"],
                row =>
                    double.Parse(row["typical"], NumberStyles.Float, CultureInfo.InvariantCulture),
                StringComparer.Ordinal
            )
    );

    /// <summary>A figure, K.</summary>
    /// <param name="name">Its name in the file.</param>
    public static double Figure(string name) => Figures.Value[name];
}
