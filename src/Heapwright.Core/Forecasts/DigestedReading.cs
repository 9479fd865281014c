using Heapwright.Core.Readings;

namespace Heapwright.Core.Forecasts;

/// <summary>What is fitted: a reading, the mean of many close together, or a squeeze.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="Value">°C, or % of wet mass.</param>
/// <param name="Deviation">Standard deviation of what differs from one reading to the next, in the unit of the value.</param>
/// <param name="Spot">Where.</param>
/// <param name="Depth">m, or null.</param>
/// <param name="Excess">How far the value is above the air, K.</param>
/// <param name="Moisture">Whether it is a squeeze.</param>
/// <param name="Agreed">Whether it is the mean of several that agree: then it is no slip.</param>
internal sealed record DigestedReading(
    double Day,
    double Value,
    double Deviation,
    ProbeSpot Spot,
    double? Depth,
    double Excess,
    bool Moisture = false,
    bool Agreed = false
);
