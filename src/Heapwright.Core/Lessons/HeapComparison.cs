using System.Collections.Immutable;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Lessons;

/// <summary>Two heaps held against each other.</summary>
public sealed record HeapComparison
{
    /// <summary>The figures.</summary>
    public required ImmutableArray<ComparedFigure> Figures { get; init; }

    /// <summary>To which day both are compared: the last on which both were read; days since building.</summary>
    public required double LastDay { get; init; }

    /// <summary>
    /// What the change does to the share of the matter held at 55 °C or above for 72 hours, percent points. The error of
    /// the model is not in it, so nothing is said of chance.
    /// </summary>
    public required Spread ShareHeldEffect { get; init; }

    /// <summary>The fitted heap.</summary>
    public required ForecastAnswer Fit { get; init; }
}
