using System.Collections.Immutable;
using Heapwright.Core.Readings;

namespace Heapwright.App.Diary;

/// <summary>The verdicts on readings as the diary stands: what was held against a reading that was corrected since is judged anew.</summary>
internal static class StandingVerdicts
{
    /// <summary>The verdicts by the id of the entry.</summary>
    /// <param name="entries">All entries with the verdicts they were kept with.</param>
    /// <param name="diary">What stands of them.</param>
    /// <param name="builtAt">When the heap was built.</param>
    public static ImmutableDictionary<Guid, PlausibilityVerdict> Of(
        ImmutableArray<JudgedEntry> entries,
        HeapDiary diary,
        DateTimeOffset builtAt
    )
    {
        var verdicts = entries
            .Where(e => e.Verdict is not null)
            .ToImmutableDictionary(e => e.Entry.Id, e => e.Verdict!);
        DateTimeOffset[] changed =
        [
            .. diary
                .Standing.Where(s => s.Corrections.Count > 0)
                .SelectMany(s => new[] { s.First.At, s.Entry.At }),
            .. diary.StruckOut.Select(s => s.First.At),
        ];
        if (changed.Length == 0)
        {
            return verdicts;
        }

        Array.Sort(changed);
        var anew = verdicts.ToBuilder();
        var history = new ReadingHistory { BuiltAt = builtAt };
        foreach (var entry in diary.Standing.Select(s => s.Entry))
        {
            if (
                entry is TemperatureEntry reading
                && anew.ContainsKey(entry.Id)
                && After(changed, entry.At)
            )
            {
                anew[entry.Id] = Plausibility.Judge(reading, history);
            }

            if (!anew.TryGetValue(entry.Id, out var verdict) || verdict.IsBelieved)
            {
                history.Add(entry);
            }
        }

        return anew.ToImmutable();
    }

    // Whether something was changed so shortly before that it mattered.
    private static bool After(DateTimeOffset[] changed, DateTimeOffset at)
    {
        var place = Array.BinarySearch(changed, at);
        var last = place >= 0 ? place : ~place - 1;
        return last >= 0 && at - changed[last] <= Plausibility.Memory;
    }
}
