using Heapwright.Core.Readings;
using Heapwright.Core.Reasons;

namespace Heapwright.App.Diary;

/// <summary>What became of one entry that somebody sent.</summary>
/// <param name="Id">The entry; null where it has no id that could be read.</param>
/// <param name="Status">Kept, already there or refused.</param>
/// <param name="Why">Why it was refused; null otherwise.</param>
/// <param name="Verdict">What is thought of it, if it is a reading that was kept.</param>
public sealed record EntryOutcome(
    Guid? Id,
    AppendStatus Status,
    Reason? Why = null,
    PlausibilityVerdict? Verdict = null
)
{
    /// <summary>A refusal.</summary>
    /// <param name="id">The entry.</param>
    /// <param name="code">The code of the sentence.</param>
    /// <param name="values">The values in it.</param>
    public static EntryOutcome Refused(Guid? id, string code, params object[] values) =>
        new(id, AppendStatus.Refused, Reason.Of(code, values));
}
