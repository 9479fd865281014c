using System.Collections.Immutable;
using Heapwright.Core.Readings;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Forecasts;

/// <summary>A heap whose readings are to be fitted, and how far ahead to look.</summary>
public sealed record ForecastQuestion
{
    /// <summary>
    /// The heap, and what was and is planned to be done to it; its <see cref="SimulationQuestion.Days"/> are not used.
    /// </summary>
    public required SimulationQuestion Heap { get; init; }

    /// <summary>Readings in any order; those after <see cref="FromDay"/> are not looked at.</summary>
    public ImmutableArray<ProbeReading> Readings { get; init; } = [];

    /// <summary>Squeezes in any order; those after <see cref="FromDay"/> are not looked at.</summary>
    public ImmutableArray<MoistureSign> Moisture { get; init; } = [];

    /// <summary>The present, days since building.</summary>
    public required double FromDay { get; init; }

    /// <summary>How many days ahead.</summary>
    public double AheadDays { get; init; } = 10;

    /// <summary>How far actions and milestones are followed, days from the present.</summary>
    public double DecisionDays { get; init; } = 21;

    /// <summary>What earlier heaps taught.</summary>
    public HeapKnowledge Knowledge { get; init; } = HeapKnowledge.None;
}
