using System.Collections.Immutable;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Forecasts;

/// <summary>A heap fitted to its readings, as it stands at the present.</summary>
internal sealed class HeapFit
{
    /// <summary>The question.</summary>
    public required ForecastQuestion Question { get; init; }

    /// <summary>What was fitted.</summary>
    public required ImmutableArray<DigestedReading> Readings { get; init; }

    /// <summary>Shape [reading]: by how much the variance of each was raised, for it did not fit with the rest.</summary>
    public required double[] Factors { get; init; }

    /// <summary>Standard deviation of the error of the model that lasts, K; 0 for most heaps.</summary>
    public required double Lasting { get; init; }

    /// <summary>What the heap is other than its members, told from the readings.</summary>
    public required CourseError Error { get; init; }

    /// <summary>Shape [reading][member]: what the fitted members say of the readings.</summary>
    public required double[][] Predicted { get; init; }

    /// <summary>The unknowns before.</summary>
    public required Unknowns Before { get; init; }

    /// <summary>The unknowns after.</summary>
    public required Unknowns After { get; init; }

    /// <summary>The fitted heap at the present.</summary>
    public required EnsembleRun Now { get; init; }

    /// <summary>Today's value as expected from the readings before it, °C; null without one.</summary>
    public required ExpectedReading? Latest { get; init; }

    /// <summary>Root mean square of what is left between readings and fit, in standard deviations of its errors.</summary>
    public required double Misfit { get; init; }

    /// <summary>Moisture of the mixture when built, % of wet mass, before and after.</summary>
    public (Spread Before, Spread After) BuiltMoisture =>
        (Moisture(Before.ToMembers()), Moisture(After.ToMembers()));

    private static Spread Moisture(HeapMembers members) =>
        Spread.OfSample([.. members.Matter.Select(m => 100 * m.Balance.Water / m.Balance.WetMass)]);
}
