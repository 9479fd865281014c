using System.Collections.Immutable;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Advice;

/// <summary>An action with what comes of it.</summary>
/// <param name="Action">The action.</param>
/// <param name="Outcomes">Shape [member].</param>
/// <param name="Gain">By how much it serves the aim better than waiting, work taken off, in the unit of the aim.</param>
/// <param name="ChanceBetter">Share of the members in which it serves the aim better than waiting, work not counted, 0 to 1.</param>
/// <param name="Why">One sentence.</param>
public sealed record RankedAction(
    HeapAction Action,
    ImmutableArray<HeapOutcome> Outcomes,
    double Gain,
    double ChanceBetter,
    Reason Why
);
