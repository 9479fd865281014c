using System.Collections.Immutable;

namespace Heapwright.Core.Hygiene;

/// <summary>
/// Puts published studies beside a record: which of them were as hot for as long. Nothing is computed from them: seeds and
/// germs of this heap were not in those studies, and the studies disagree.
/// </summary>
public static class StudyEvidence
{
    /// <summary>Every study beside the record.</summary>
    /// <param name="studies">The studies.</param>
    /// <param name="log">The record.</param>
    public static ImmutableArray<StudyComparison> Compare(
        IEnumerable<StudyResult> studies,
        HeatLog log
    )
    {
        ArgumentNullException.ThrowIfNull(studies);
        ArgumentNullException.ThrowIfNull(log);
        return [.. studies.Select(s => Compare(s, log))];
    }

    private static StudyComparison Compare(StudyResult study, HeatLog log)
    {
        if (study.Band is not { } band)
        {
            return new StudyComparison(study, null, null);
        }

        var hours = HeatPieces
            .Of(log, band, gapsHot: false)
            .Select(p => p.Hours)
            .DefaultIfEmpty(0)
            .Max();
        return new StudyComparison(
            study,
            hours,
            study.Hours is { } asked ? hours >= asked - 1e-6 : null
        );
    }
}
