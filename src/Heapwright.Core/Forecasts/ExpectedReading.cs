using Heapwright.Core.Quantities;

namespace Heapwright.Core.Forecasts;

/// <summary>The latest reading held against what was expected of it before it was taken.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="Expected">°C: nine readings in ten lie in this range.</param>
/// <param name="Celsius">What was read, °C.</param>
public sealed record ExpectedReading(double Day, Spread Expected, double Celsius)
{
    /// <summary>Whether it lies in the range.</summary>
    public bool IsInside => Celsius >= Expected.Low && Celsius <= Expected.High;
}
