namespace Heapwright.Core.Forecasts;

/// <summary>A reading held against a forecast that was made before it.</summary>
/// <param name="AheadDays">From the forecast to the reading, days.</param>
/// <param name="Expected">What was forecast for the time of the reading.</param>
/// <param name="Celsius">What was read, °C.</param>
public sealed record ForecastMiss(double AheadDays, CourseDay Expected, double Celsius)
{
    /// <summary>How far the reading lies from the middle of the forecast, K.</summary>
    public double Kelvins => Math.Abs(Celsius - Expected.P50);

    /// <summary>Whether it lies where half of the cases were expected.</summary>
    public bool IsInHalf => Celsius >= Expected.P25 && Celsius <= Expected.P75;

    /// <summary>Whether it lies where nine cases in ten were expected.</summary>
    public bool IsInNineTenths => Celsius >= Expected.P05 && Celsius <= Expected.P95;
}
