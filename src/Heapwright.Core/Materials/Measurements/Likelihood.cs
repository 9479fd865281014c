namespace Heapwright.Core.Materials.Measurements;

/// <summary>How likely a measurement would have come out as it did, for each value the property may have.</summary>
/// <param name="Property">The property measured.</param>
/// <param name="LogAt">The natural logarithm of the likelihood at a value, in the unit of the property; any constant may be added.</param>
/// <param name="Value">The value measured, in the unit of the property; null where the outcome is a word.</param>
/// <param name="StandardDeviation">Its error, in the same unit; null where the outcome is a word.</param>
public sealed record Likelihood(
    MaterialProperty Property,
    Func<double, double> LogAt,
    double? Value,
    double? StandardDeviation
);
