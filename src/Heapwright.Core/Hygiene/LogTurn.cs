namespace Heapwright.Core.Hygiene;

/// <summary>A turn of a heat record.</summary>
/// <param name="Hours">When, in hours from the same moment as the readings.</param>
/// <param name="Day">The number of the calendar day.</param>
public readonly record struct LogTurn(double Hours, int Day);
