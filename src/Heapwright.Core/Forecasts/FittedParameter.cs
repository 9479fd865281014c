using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Forecasts;

/// <summary>A parameter before and after the readings, in its unit.</summary>
/// <param name="Parameter">The parameter.</param>
/// <param name="Before">Before.</param>
/// <param name="After">After.</param>
/// <param name="Score">After, on the scale on which the prior is standard normal.</param>
public sealed record FittedParameter(
    HeapParameter Parameter,
    Spread Before,
    Spread After,
    ParameterScore Score
);
