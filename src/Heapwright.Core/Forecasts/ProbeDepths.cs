using Heapwright.Core.Readings;

namespace Heapwright.Core.Forecasts;

/// <summary>How deep a probe is taken to stand where nothing was noted.</summary>
public static class ProbeDepths
{
    /// <summary>The depth, m; null stands for the very core.</summary>
    /// <param name="spot">Where the probe stood.</param>
    public static double? Usual(ProbeSpot spot) =>
        spot switch
        {
            ProbeSpot.Core => null,
            ProbeSpot.Side => 0.15,
            _ => 0.10,
        };
}
