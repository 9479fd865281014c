namespace Heapwright.Core.Hygiene;

/// <summary>A moment of a heat record.</summary>
/// <param name="Hours">Hours from the moment that the record counts from.</param>
/// <param name="Day">The number of its calendar day.</param>
public readonly record struct LogMoment(double Hours, int Day);
