using Heapwright.Core.Quantities;

namespace Heapwright.Core.Readings;

/// <summary>
/// The diary of one heap, worked out anew from its entries: whatever the order in which they arrived, the same entries
/// give the same diary.
/// </summary>
public sealed record HeapDiary
{
    private HeapDiary() { }

    /// <summary>What stands, in order of time; at the same moment in order of the ids.</summary>
    public EquatableList<StandingEntry> Standing { get; private init; } = [];

    /// <summary>What was struck out, as it was first made, in order of time.</summary>
    public EquatableList<StandingEntry> StruckOut { get; private init; } = [];

    /// <summary>Corrections of entries that have not arrived yet.</summary>
    public EquatableList<CorrectionEntry> Waiting { get; private init; } = [];

    /// <summary>Ids under which different things arrived; the one that arrived first counts.</summary>
    public EquatableList<Guid> Conflicts { get; private init; } = [];

    /// <summary>The diary of these entries.</summary>
    /// <param name="entries">The entries, in any order; some may be there twice.</param>
    public static HeapDiary Of(IEnumerable<DiaryEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var (known, conflicts) = Once(entries);
        var correctors = known
            .Values.OfType<CorrectionEntry>()
            .Where(c => c.IsWhole)
            .ToLookup(c => c.Corrects);
        var roots = known.Values.Where(e => e is not CorrectionEntry).ToArray();
        var reached = Reached(roots, correctors);
        var effects = new Dictionary<Guid, Effect>(reached.Count);
        // Those that correct come after what they correct, so from the end everything is decided when it is needed.
        for (var i = reached.Count - 1; i >= 0; i--)
        {
            var correction = reached[i];
            var above = Last(correctors[correction.Id], effects);
            effects[correction.Id] =
                above is null ? new Effect(true, correction.Replacement)
                : above.Entry is null ? Effect.None
                : above;
        }

        var standing = new List<StandingEntry>(roots.Length);
        var struck = new List<StandingEntry>();
        foreach (var root in roots)
        {
            var last = Last(correctors[root.Id], effects);
            var trail = last is null ? [] : Trail(root, correctors);
            if (last is { Entry: null })
            {
                struck.Add(new StandingEntry(root, root, trail));
            }
            else
            {
                standing.Add(new StandingEntry(last?.Entry ?? root, root, trail));
            }
        }

        return new HeapDiary
        {
            Standing = [.. standing.OrderBy(s => s.Entry.At).ThenBy(s => s.Entry.Id)],
            StruckOut = [.. struck.OrderBy(s => s.Entry.At).ThenBy(s => s.Entry.Id)],
            Waiting =
            [
                .. known
                    .Values.OfType<CorrectionEntry>()
                    .Where(c => !effects.ContainsKey(c.Id))
                    .OrderBy(c => c.At)
                    .ThenBy(c => c.Id),
            ],
            Conflicts = [.. conflicts.Order()],
        };
    }

    private static (Dictionary<Guid, DiaryEntry> Known, HashSet<Guid> Conflicts) Once(
        IEnumerable<DiaryEntry> entries
    )
    {
        var known = new Dictionary<Guid, DiaryEntry>();
        var conflicts = new HashSet<Guid>();
        foreach (
            var entry in entries
                .OrderBy(e => e.ReceivedAt)
                .ThenBy(e => e.At)
                .ThenBy(e => e.Way)
                .ThenBy(e => e.ToString(), StringComparer.Ordinal)
        )
        {
            if (!known.TryAdd(entry.Id, entry) && !known[entry.Id].SaysTheSameAs(entry))
            {
                conflicts.Add(entry.Id);
            }
        }

        return (known, conflicts);
    }

    // All corrections that lead to an entry, those of a correction after it; rings of corrections lead to none.
    private static List<CorrectionEntry> Reached(
        IEnumerable<DiaryEntry> roots,
        ILookup<Guid, CorrectionEntry> correctors
    )
    {
        var reached = new List<CorrectionEntry>();
        foreach (var root in roots)
        {
            var next = reached.Count;
            reached.AddRange(correctors[root.Id]);
            for (; next < reached.Count; next++)
            {
                reached.AddRange(correctors[reached[next].Id]);
            }
        }

        return reached;
    }

    // Of several corrections of one entry the last one made counts, of the same moment the one with the highest id.
    private static Effect? Last(
        IEnumerable<CorrectionEntry> corrections,
        Dictionary<Guid, Effect> effects
    ) =>
        corrections
            .OrderByDescending(c => c.At)
            .ThenByDescending(c => c.Id)
            .Select(c => effects[c.Id])
            .FirstOrDefault(e => e.Counts);

    private static EquatableList<CorrectionEntry> Trail(
        DiaryEntry root,
        ILookup<Guid, CorrectionEntry> correctors
    ) => [.. Reached([root], correctors).OrderBy(c => c.At).ThenBy(c => c.Id)];

    // What a correction does in the end; it does nothing where it was taken back.
    private sealed record Effect(bool Counts, DiaryEntry? Entry)
    {
        public static Effect None { get; } = new(false, null);
    }
}
