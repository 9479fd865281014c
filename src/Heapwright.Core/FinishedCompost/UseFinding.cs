using System.Collections.Immutable;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.FinishedCompost;

/// <summary>Whether compost is ready for a use, why, and how long to wait.</summary>
/// <param name="Use">The use.</param>
/// <param name="Verdict">Whether it is ready.</param>
/// <param name="ChanceRipe">The chance that it is ripe enough, by its stage alone.</param>
/// <param name="Reasons">Why.</param>
/// <param name="WaitDays">Days from now until it may be; 0 where it is; null where waiting does not help or nothing is known.</param>
public sealed record UseFinding(
    CompostUse Use,
    UseVerdict Verdict,
    double ChanceRipe,
    ImmutableArray<Reason> Reasons,
    Spread? WaitDays
);
