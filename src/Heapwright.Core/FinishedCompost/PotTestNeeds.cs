namespace Heapwright.Core.FinishedCompost;

/// <summary>What a test in pots needs before it may be called clean.</summary>
/// <param name="Pots">Pots on each side.</param>
/// <param name="Days">Days, where the leaves were not counted.</param>
/// <param name="LeafSets">Sets of leaves.</param>
public sealed record PotTestNeeds(double Pots, double Days, double LeafSets);
