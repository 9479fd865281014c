namespace Heapwright.Core.FinishedCompost;

/// <summary>A published limit on spreading, and whether it is kept.</summary>
/// <param name="Figure">The limit.</param>
/// <param name="Value">What it is held against.</param>
/// <param name="ChanceWithin">The chance that it is kept; the limit itself is kept.</param>
public sealed record LimitFinding(FinishFigure Figure, Sampled Value, double ChanceWithin);
