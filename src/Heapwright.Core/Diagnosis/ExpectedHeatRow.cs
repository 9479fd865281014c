using Heapwright.Core.Quantities;

namespace Heapwright.Core.Diagnosis;

/// <summary>A row of what the simulation expects of a good heap.</summary>
/// <param name="Volume">The heap, m³.</param>
/// <param name="Air">The air, °C.</param>
/// <param name="Day">Days since building.</param>
/// <param name="Core">The core, °C.</param>
public sealed record ExpectedHeatRow(double Volume, double Air, double Day, Spread Core);
