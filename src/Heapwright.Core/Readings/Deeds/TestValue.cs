namespace Heapwright.Core.Readings.Deeds;

/// <summary>One figure of a test.</summary>
/// <param name="Field">Its field in <c>finish</c>, with the unit in its name.</param>
/// <param name="Value">The figure.</param>
public sealed record TestValue(string Field, double Value);
