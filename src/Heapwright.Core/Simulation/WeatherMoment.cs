namespace Heapwright.Core.Simulation;

/// <summary>The weather at one moment.</summary>
/// <param name="Air">°C.</param>
/// <param name="Wind">m/s.</param>
/// <param name="Rain">mm per day.</param>
/// <param name="Humidity">Relative humidity, 0 to 1.</param>
/// <param name="Sun">W/m² on level ground.</param>
public readonly record struct WeatherMoment(
    double Air,
    double Wind,
    double Rain,
    double Humidity,
    double Sun
);
