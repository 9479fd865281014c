namespace Heapwright.Core.Simulation;

/// <summary>Water is poured on.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="Litres">Litres.</param>
public sealed record Watered(double Day, double Litres) : HeapEvent(Day);
