using Heapwright.Core.Reasons;

namespace Heapwright.Core.Lessons;

/// <summary>One thing predicted and measured.</summary>
/// <param name="Subject">What.</param>
/// <param name="Day">The day it was measured on, where it is of one day; days since building.</param>
/// <param name="Predicted">
/// Where nine in ten of what would be measured were to be expected from the recipe alone, before any reading; null where
/// nothing was measured to compare it with.
/// </param>
/// <param name="Measured">What was measured; infinite for a day that did not come; null where it was not.</param>
/// <param name="Verdict">Whether it lies in the range.</param>
/// <param name="Why">Why nobody can tell; null where one can.</param>
public sealed record LessonRow(
    LessonSubject Subject,
    double? Day,
    FigureRange? Predicted,
    double? Measured,
    LessonVerdict Verdict,
    Reason? Why
);
