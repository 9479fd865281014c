using System.Globalization;

namespace Heapwright.Core.Readings;

/// <summary>What the fields of an entry may hold. Whether a value is likely is another question; see <see cref="Plausibility"/>.</summary>
public static class EntryLimits
{
    /// <summary>The coldest a thermometer can show, °C: absolute zero.</summary>
    public const double ColdestC = -273.15;

    /// <summary>The hottest that is taken for a temperature, °C.</summary>
    public const double HottestC = 2000;

    /// <summary>The deepest a probe can stand, cm.</summary>
    public const double DeepestCm = 500;

    /// <summary>The most water in one go, litres.</summary>
    public const double MostLitres = 100_000;

    /// <summary>The most rain in one entry, mm.</summary>
    public const double MostRainMm = 2000;

    /// <summary>The longest name of a bed, in characters.</summary>
    public const int LongestBed = 80;

    /// <summary>The longest note, in characters.</summary>
    public const int LongestNote = 2000;

    /// <summary>The longest name of an instrument, in characters.</summary>
    public const int LongestInstrument = 60;

    /// <summary>The most words of one kind in an entry.</summary>
    public const int MostWords = 40;

    /// <summary>The most ingredients added at once.</summary>
    public const int MostIngredients = 60;

    internal static double Within(double value, double lowest, double highest, string name) =>
        value >= lowest && value <= highest
            ? value
            : throw new ArgumentOutOfRangeException(
                name,
                value,
                string.Create(CultureInfo.InvariantCulture, $"{lowest} to {highest} is allowed")
            );

    internal static string Text(string value, int fewest, int most, string name)
    {
        ArgumentNullException.ThrowIfNull(value, name);
        return value.Length >= fewest && value.Length <= most
            ? value
            : throw new ArgumentOutOfRangeException(
                name,
                value.Length,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{fewest} to {most} characters are allowed"
                )
            );
    }
}
