namespace Heapwright.Core.Forecasts;

/// <summary>What is left of a heap at a day, in one member.</summary>
/// <param name="FastPercent">Fast matter, % of the most there ever was before.</param>
/// <param name="DryKilograms">Dry matter, kg.</param>
/// <param name="MoisturePercent">Water, % of wet mass.</param>
/// <param name="Litres">The volume it takes up, litres.</param>
public readonly record struct HeapRest(
    double FastPercent,
    double DryKilograms,
    double MoisturePercent,
    double Litres
);
