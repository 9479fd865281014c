namespace Heapwright.Core.Diagnosis;

/// <summary>One reading of a question, in the order of time.</summary>
/// <param name="Day">Days since building, or null.</param>
/// <param name="Celsius">The temperature, °C.</param>
/// <param name="Spot"><c>core</c>, <c>side</c>, <c>top</c> or <c>base</c>.</param>
/// <param name="ErrorCelsius">The standard error of the temperature, °C.</param>
public sealed record HeatTold(double? Day, double Celsius, string Spot, double ErrorCelsius);
