using System.Collections.Immutable;
using Heapwright.Core.Bins;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Recipes;

/// <summary>What is there, what may be bought, what holds the heap, and what is wanted.</summary>
public sealed record RecipeQuestion
{
    /// <summary>The number of scenarios of a question in which anything is uncertain.</summary>
    public const int Scenarios = 512;

    /// <summary>The chance with which conditions hold unless told: water is set by hand while building.</summary>
    public const double UsualChance = 0.5;

    /// <summary>What may be used.</summary>
    public required ImmutableArray<RecipeItem> Items { get; init; }

    /// <summary>What holds the heap, or null.</summary>
    public Bin? Bin { get; init; }

    /// <summary>The least filled volume, litres, as a condition; null for none.</summary>
    public double? LeastVolume { get; init; }

    /// <summary>The most filled volume, litres, as a condition; null for none.</summary>
    public double? MostVolume { get; init; }

    /// <summary>Mean air temperature, °C.</summary>
    public double AirTemperature { get; init; } = 15;

    /// <summary>The parameters of the simulation that says what to expect.</summary>
    public required HeapParameters Parameters { get; init; }

    /// <summary>What is wanted most.</summary>
    public RecipeAim Aim { get; init; } = RecipeAim.UseMost;

    /// <summary>The chance with which the conditions must hold jointly, 0 to 1.</summary>
    public double Chance { get; init; } = UsualChance;

    /// <summary>The ranges.</summary>
    public Bands Bands { get; init; } = Bands.Usual;

    /// <summary>Filled volume over loose sum, where given.</summary>
    public Spread? MixingVolumeFactor { get; init; }

    /// <summary>A heap that stands and is added to, or null.</summary>
    public StandingHeap? Onto { get; init; }

    /// <summary>The seed of the scenarios.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>
    /// The most nodes that all searches of the question visit together; beyond it the best found is given without
    /// proof. A node costs up to a fifth of a millisecond, and nobody waits for a recipe longer than some seconds.
    /// </summary>
    public long Nodes { get; init; } = 200_000;
}
