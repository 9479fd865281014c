namespace Heapwright.Core.Hygiene;

/// <summary>A temperature of a heat record.</summary>
/// <param name="Hours">When, in hours from any fixed moment.</param>
/// <param name="Day">The number of the calendar day on which it was read.</param>
/// <param name="Probe">The place it was read at; readings of one name belong together.</param>
/// <param name="Celsius">What was read, °C.</param>
public readonly record struct LogReading(double Hours, int Day, string Probe, double Celsius)
{
    internal LogMoment Moment => new(Hours, Day);
}
