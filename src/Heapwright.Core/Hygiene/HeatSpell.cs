namespace Heapwright.Core.Hygiene;

/// <summary>A spell that a rule asks for within its period.</summary>
/// <param name="Band">The temperatures.</param>
/// <param name="Hours">How long without a break, hours.</param>
public sealed record HeatSpell(HeatBand Band, double Hours);
