using System.Collections.Immutable;
using Heapwright.Core.Bins;
using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Simulation;

/// <summary>A heap to simulate.</summary>
public sealed record SimulationQuestion
{
    /// <summary>The bin, or the outline of a free heap.</summary>
    public required Bin Bin { get; init; }

    /// <summary>What it is built of, water included.</summary>
    public required MixtureQuestion Mixture { get; init; }

    /// <summary>The parameters.</summary>
    public required HeapParameters Parameters { get; init; }

    /// <summary>The weather.</summary>
    public required Weather Weather { get; init; }

    /// <summary>The walls.</summary>
    public Barrier Walls { get; init; } = Surroundings.Walls["slatted"];

    /// <summary>The cover at the start.</summary>
    public Barrier Cover { get; init; } = Surroundings.Covers["breathable"];

    /// <summary>Temperature of the matter when built, °C; null for that of the air.</summary>
    public double? StartCelsius { get; init; }

    /// <summary>What is done to it; in any order.</summary>
    public ImmutableArray<HeapEvent> Events { get; init; } = [];

    /// <summary>How many days, above 0.</summary>
    public double Days { get; init; } = 60;

    /// <summary>How many members; 1 runs everything at its usual value.</summary>
    public int Members { get; init; } = 200;

    /// <summary>The seed.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Into how many each ring and layer of the usual grid is cut.</summary>
    public int Refinement { get; init; } = 1;

    /// <summary>Tolerated error of a step, K.</summary>
    public double Tolerance { get; init; } = 0.03;

    /// <summary>Whether the milestones of hygiene are followed.</summary>
    public bool FollowParcels { get; init; } = true;
}
