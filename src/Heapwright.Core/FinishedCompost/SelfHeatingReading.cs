namespace Heapwright.Core.FinishedCompost;

/// <summary>A reading of the self-heating test.</summary>
/// <param name="Day">Days since the first reading, or since the test began.</param>
/// <param name="Celsius">In the compost, °C.</param>
/// <param name="RoomCelsius">In the room at that time, °C; null where it was not read.</param>
public sealed record SelfHeatingReading(double Day, double Celsius, double? RoomCelsius);
