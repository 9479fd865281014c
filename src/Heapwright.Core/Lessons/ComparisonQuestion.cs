using Heapwright.Core.Forecasts;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Lessons;

/// <summary>A heap held against another one, or against itself with something done otherwise.</summary>
public sealed record ComparisonQuestion
{
    /// <summary>The heap that is fitted, with its readings.</summary>
    public required ForecastQuestion Heap { get; init; }

    /// <summary>The same with what was changed: the recipe, bin and events of the other heap, in its own weather.</summary>
    public required SimulationQuestion Changed { get; init; }

    /// <summary>The other heap with its readings; null where it is held against itself.</summary>
    public ForecastQuestion? Other { get; init; }
}
