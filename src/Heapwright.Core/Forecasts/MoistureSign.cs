using Heapwright.Core.Quantities;

namespace Heapwright.Core.Forecasts;

/// <summary>What a squeeze in the hand said of the moisture of the heap.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="Moisture">% of wet mass, as a range.</param>
public sealed record MoistureSign(double Day, Spread Moisture);
