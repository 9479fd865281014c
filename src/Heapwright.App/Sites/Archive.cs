using System.Collections.Immutable;
using Heapwright.App.Changes;

namespace Heapwright.App.Sites;

/// <summary>Everything a site keeps, as one JSON file carries it.</summary>
public sealed record Archive
{
    /// <summary>
    /// The number of this form of the file: 4 since what heaps taught is in it, 3 since heaps and their diaries are, 2 since
    /// the record of changes is; older ones are read as well.
    /// </summary>
    public const int CurrentSchema = 4;

    /// <summary>What the file says it is.</summary>
    public const string Mark = "heapwright_site";

    /// <summary>The form of the file.</summary>
    public required int Schema { get; init; }

    /// <summary>What the file is.</summary>
    public required string What { get; init; }

    /// <summary>When it was written, in ISO 8601.</summary>
    public required NodaTime.Instant ExportedAt { get; init; }

    /// <summary>The site; null where none was started.</summary>
    public Site? Site { get; init; }

    /// <summary>Its containers.</summary>
    public ImmutableArray<OwnContainer> Containers { get; init; } = [];

    /// <summary>Its bays.</summary>
    public ImmutableArray<Bay> Bays { get; init; } = [];

    /// <summary>Its own materials.</summary>
    public ImmutableArray<OwnMaterial> Materials { get; init; } = [];

    /// <summary>Its measurements.</summary>
    public ImmutableArray<Measurement> Measurements { get; init; } = [];

    /// <summary>What is at hand.</summary>
    public ImmutableArray<StockEntry> Stock { get; init; } = [];

    /// <summary>The kept recipes.</summary>
    public ImmutableArray<SavedRecipe> Recipes { get; init; } = [];

    /// <summary>The build sheets.</summary>
    public ImmutableArray<SavedSheet> Sheets { get; init; } = [];

    /// <summary>The heaps.</summary>
    public ImmutableArray<KeptHeap> Heaps { get; init; } = [];

    /// <summary>What heaps taught.</summary>
    public ImmutableArray<KeptLesson> Lessons { get; init; } = [];

    /// <summary>
    /// The diaries, each from its first entry on; those of heaps that were taken out too. Empty where they are too large
    /// for a file.
    /// </summary>
    public ImmutableArray<CarriedDiary> Diaries { get; init; } = [];

    /// <summary>How many entries stayed behind because the diaries are too large for a file; see <see cref="Diaries"/>.</summary>
    public long EntriesLeftOut { get; init; }

    /// <summary>
    /// The record of changes from its beginning, oldest first; empty in files of schema 1, and where it is too large for
    /// a file.
    /// </summary>
    public ImmutableArray<Act> Record { get; init; } = [];

    /// <summary>All things in it, in the order in which they must be brought in.</summary>
    public ImmutableArray<Item> Items() =>
        [
            .. Site is null ? [] : new Item[] { Site },
            .. Containers,
            .. Bays,
            .. Materials,
            .. Measurements,
            .. Stock,
            .. Recipes,
            .. Sheets,
            .. Heaps,
            .. Lessons,
        ];
}
