namespace Heapwright.App.Contract;

/// <summary>Degrees Celsius and Fahrenheit, by definition of the latter.</summary>
internal static class Degrees
{
    /// <summary>°C of °F.</summary>
    /// <param name="fahrenheit">°F.</param>
    public static double Celsius(double fahrenheit) => (fahrenheit - 32) / 1.8;

    /// <summary>°F of °C.</summary>
    /// <param name="celsius">°C.</param>
    public static double Fahrenheit(double celsius) => (celsius * 1.8) + 32;
}
