using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Lessons;

/// <summary>One figure of two heaps. A day that does not come within the time compared counts as the last day of it.</summary>
/// <param name="Figure">The figure.</param>
/// <param name="Unchanged">The heap as its readings tell it.</param>
/// <param name="Changed">The same heap with the change, by the fitted model.</param>
/// <param name="Effect">What the change does, case by case: changed less unchanged; the error of the model included.</param>
/// <param name="EffectVerdict">Whether nine in ten cases agree on which way it goes.</param>
/// <param name="Read">What was read off the heap; null where that is too little.</param>
/// <param name="OtherRead">What was read off the other heap; null without one, or where that is too little.</param>
/// <param name="Chance">
/// Where nine in ten of what is read off another heap lie if nothing is changed: hands, stuff, dial and the error of the
/// model differ from heap to heap. Null without another heap.
/// </param>
/// <param name="Verdict">Whether what was read off the other heap is more than that chance.</param>
/// <param name="Why">Why nobody can tell; null where one can.</param>
public sealed record ComparedFigure(
    HeapFigure Figure,
    Spread Unchanged,
    Spread Changed,
    Spread Effect,
    ComparisonVerdict EffectVerdict,
    double? Read,
    double? OtherRead,
    Spread? Chance,
    ComparisonVerdict Verdict,
    Reason? Why
);
