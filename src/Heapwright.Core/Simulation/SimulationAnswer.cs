using System.Collections.Immutable;

namespace Heapwright.Core.Simulation;

/// <summary>The simulated life of a heap. Series have the shape [time][member].</summary>
public sealed record SimulationAnswer
{
    /// <summary>What was asked.</summary>
    public required SimulationQuestion Question { get; init; }

    /// <summary>The zones.</summary>
    public required HeapGrid Grid { get; init; }

    /// <summary>Shape [time]: days since building; the day of an event stands twice, before and after it.</summary>
    public required ImmutableArray<double> Days { get; init; }

    /// <summary>Centre of the heap, °C.</summary>
    public required double[][] Core { get; init; }

    /// <summary>Mean over the dry matter, °C.</summary>
    public required double[][] Mean { get; init; }

    /// <summary>The outermost ring, °C.</summary>
    public required double[][] Outer { get; init; }

    /// <summary>Moisture of the whole, % of wet mass.</summary>
    public required double[][] Moisture { get; init; }

    /// <summary>Oxygen in the pores of the core, % by volume.</summary>
    public required double[][] Oxygen { get; init; }

    /// <summary>Height in the middle, cm.</summary>
    public required double[][] Height { get; init; }

    /// <summary>Shape [time][zone][member]: °C.</summary>
    public required double[][][] Zones { get; init; }

    /// <summary>Shape [member].</summary>
    public required HeapMilestones[] Milestones { get; init; }

    /// <summary>Shape [member].</summary>
    public required HeatAndBalance[] Books { get; init; }

    /// <summary>By how much the matter had to be trodden in to fit the bin, typical; 1 where it was not.</summary>
    public required double Trodden { get; init; }

    /// <summary>Built volume, m³, typical.</summary>
    public required double BuiltVolume { get; init; }

    /// <summary>Shape [member]: water put in, additions included, kg.</summary>
    public required double[] WaterIn { get; init; }

    /// <summary>Shape [member]: carbon put in, additions included, kg.</summary>
    public required double[] CarbonIn { get; init; }

    /// <summary>Shape [member]: nitrogen put in, additions included, kg.</summary>
    public required double[] NitrogenIn { get; init; }

    /// <summary>Shape [member]: C:N of the whole at the end.</summary>
    public required double[] FinalRatio { get; init; }

    /// <summary>The least mass that any pool, water or nitrogen of any zone had at any look, kg; never below 0.</summary>
    public required double LeastMass { get; init; }

    /// <summary>Steps taken by all blocks together.</summary>
    public required long Steps { get; init; }
}
