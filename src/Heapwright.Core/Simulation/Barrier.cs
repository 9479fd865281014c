namespace Heapwright.Core.Simulation;

/// <summary>What a wall or cover does.</summary>
/// <param name="Resistance">Thermal resistance, m²K/W.</param>
/// <param name="Openness">Share of free passage for air, 0 to 1.</param>
/// <param name="Evaporation">Share of free evaporation, 0 to 1.</param>
/// <param name="Shed">Share of rain kept off, 0 to 1.</param>
public readonly record struct Barrier(
    double Resistance,
    double Openness,
    double Evaporation,
    double Shed
);
