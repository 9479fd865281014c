using UnitsNet;

namespace Heapwright.Core.Readings;

/// <summary>A temperature that was read off a probe in the heap.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="Temperature">What was read.</param>
/// <param name="Spot">Where the probe stood.</param>
/// <param name="Depth">How deep its tip was in the matter, from the nearest surface at that spot; null if not noted.</param>
public sealed record ProbeReading(
    double Day,
    Temperature Temperature,
    ProbeSpot Spot = ProbeSpot.Core,
    Length? Depth = null
);
