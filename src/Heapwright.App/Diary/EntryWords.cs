using Heapwright.Core.Materials.Measurements;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Core.Simulation;

namespace Heapwright.App.Diary;

/// <summary>The words of entries, as they stand in JSON; those of the contract where it has them.</summary>
public static class EntryWords
{
    /// <summary>The spots of a probe.</summary>
    public static IReadOnlyList<string> Spots { get; } = ["core", "side", "top", "base"];

    /// <summary>The places of a handful.</summary>
    public static IReadOnlyList<string> Places { get; } = ["core", "outside", "base"];

    /// <summary>What a handful does.</summary>
    public static IReadOnlyList<string> Squeezes { get; } =
    ["dust", "dry", "sponge", "drips", "streams"];

    /// <summary>How well a turn mixed.</summary>
    public static IReadOnlyList<string> Hows { get; } = ["poor", "fair", "good"];

    /// <summary>What was turned.</summary>
    public static IReadOnlyList<string> Parts { get; } = ["all", "top_half", "outside_in"];

    /// <summary>The covers.</summary>
    public static IReadOnlyList<string> Covers { get; } = [.. Surroundings.Covers.Keys];

    /// <summary>What can be done to a heap.</summary>
    public static IReadOnlyList<string> Deeds { get; } =
    [
        "built",
        "turn",
        "water",
        "add",
        "cover",
        "rain",
        "split",
        "merge",
        "move",
        "spread",
        "test",
        "close",
    ];

    /// <summary>The tests.</summary>
    public static IReadOnlyList<string> Tests { get; } =
    ["self_heating", "seed_test", "bean_test", "bag_test", "amount", "lab"];

    /// <summary>The kinds of entries.</summary>
    public static IReadOnlyList<string> Kinds { get; } =
    ["temperature", "sign", "event", "note", "photo", "correction"];

    /// <summary>The ways by which entries come.</summary>
    public static IReadOnlyList<string> Ways { get; } = ["page", "cli", "csv", "http", "mqtt"];

    /// <summary>The verdicts.</summary>
    public static IReadOnlyList<string> Statuses { get; } =
    ["plausible", "doubtful", "asks", "impossible"];

    /// <summary>The kind of an entry.</summary>
    /// <param name="entry">The entry.</param>
    public static string Kind(DiaryEntry entry) =>
        entry switch
        {
            TemperatureEntry => "temperature",
            SignEntry => "sign",
            EventEntry => "event",
            NoteEntry => "note",
            PhotoEntry => "photo",
            _ => "correction",
        };

    /// <summary>The word for a deed.</summary>
    /// <param name="deed">The deed.</param>
    public static string Of(HeapDeed deed) =>
        deed switch
        {
            BuiltDeed => "built",
            TurnedDeed => "turn",
            WateredDeed => "water",
            AddedDeed => "add",
            CoveredDeed => "cover",
            RainedDeed => "rain",
            SplitDeed => "split",
            MergedDeed => "merge",
            MovedDeed => "move",
            SpreadDeed => "spread",
            TestedDeed => "test",
            _ => "close",
        };

    /// <summary>The word for a spot.</summary>
    /// <param name="spot">The spot.</param>
    public static string Of(ProbeSpot spot) => Spots[(int)spot];

    /// <summary>The word for a place.</summary>
    /// <param name="place">The place.</param>
    public static string Of(SignPlace place) => Places[(int)place];

    /// <summary>The word for what a handful does.</summary>
    /// <param name="word">What it does.</param>
    public static string Of(SqueezeWord word) => Squeezes[(int)word];

    /// <summary>The word for how well a turn mixed.</summary>
    /// <param name="how">How well.</param>
    public static string Of(Thoroughness how) => Hows[(int)how];

    /// <summary>The word for what was turned.</summary>
    /// <param name="part">What.</param>
    public static string Of(TurnedPart part) => Parts[(int)part];

    /// <summary>The word for a test.</summary>
    /// <param name="test">The test.</param>
    public static string Of(HomeTest test) => Tests[(int)test];

    /// <summary>The word for a way.</summary>
    /// <param name="way">The way.</param>
    public static string Of(EntryWay way) => Ways[(int)way];

    /// <summary>The word for a verdict.</summary>
    /// <param name="status">The verdict.</param>
    public static string Of(PlausibilityStatus status) => Statuses[(int)status];

    /// <summary>The number of a word in its list, as the enumerations count.</summary>
    /// <param name="words">The list.</param>
    /// <param name="word">The word; one of the list.</param>
    public static int Number(IReadOnlyList<string> words, string word)
    {
        for (var i = 0; i < words.Count; i++)
        {
            if (string.Equals(words[i], word, StringComparison.Ordinal))
            {
                return i;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(word), word, string.Join(", ", words));
    }
}
