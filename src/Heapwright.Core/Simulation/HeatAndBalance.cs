namespace Heapwright.Core.Simulation;

/// <summary>Where the heat of one member went, and what its books leave unaccounted for.</summary>
/// <param name="LatentPercent">With vapour, % of all that left.</param>
/// <param name="SurfacePercent">Through surfaces, %.</param>
/// <param name="AirPercent">With dry air, %.</param>
/// <param name="WaterError">kg.</param>
/// <param name="CarbonError">kg.</param>
/// <param name="NitrogenError">kg.</param>
/// <param name="EnergyErrorPercent">% of the heat made or, if that is more, of the heat that left through surfaces.</param>
public readonly record struct HeatAndBalance(
    double LatentPercent,
    double SurfacePercent,
    double AirPercent,
    double WaterError,
    double CarbonError,
    double NitrogenError,
    double EnergyErrorPercent
);
