using System.Collections.Immutable;

namespace Heapwright.Core.Materials.Guessing;

/// <summary>The words in which unknown stuff can be described.</summary>
public static class LookWords
{
    private static readonly string[] GreenWords = ["green", "bright", "lush", "olive"];

    private static readonly string[] FadedWords =
    [
        "brown",
        "yellow",
        "golden",
        "straw",
        "tan",
        "beige",
        "pale",
        "bleached",
        "russet",
        "rusty",
        "orange",
        "amber",
        "buff",
        "cream",
        "ivory",
        "blond",
        "chestnut",
        "chocolate",
    ];

    // Colours that people name and that tell nothing about what is inside.
    private static readonly string[] SilentColours =
    [
        "black",
        "dark",
        "white",
        "grey",
        "gray",
        "red",
        "purple",
        "pink",
        "blue",
        "violet",
        "silver",
        "dull",
        "mixed",
        "light",
    ];

    private static readonly (string Word, double Low, double High)[] MoistureBands =
    [
        ("dusty", 0, 15),
        ("powdery", 0, 15),
        ("parched", 0, 15),
        ("crisp", 0, 20),
        ("crunchy", 0, 20),
        ("brittle", 0, 20),
        ("snappy", 0, 20),
        ("rustling", 0, 20),
        ("dry", 0, 35),
        ("limp", 40, 80),
        ("damp", 35, 65),
        ("moist", 40, 68),
        ("clammy", 40, 70),
        ("muddy", 50, 100),
        ("juicy", 70, 100),
        ("wet", 60, 100),
        ("soggy", 65, 100),
        ("sticky", 55, 100),
        ("slimy", 70, 100),
        ("dripping", 70, 100),
    ];

    private static readonly string[] ToughWords =
    [
        "tough",
        "hard",
        "woody",
        "stringy",
        "fibrous",
        "stiff",
        "prickly",
        "leathery",
        "rigid",
    ];

    private static readonly string[] TenderWords =
    [
        "soft",
        "tender",
        "floppy",
        "fluffy",
        "mushy",
        "silky",
    ];

    // Feels that people name and that tell neither of water nor of toughness.
    private static readonly string[] SilentFeels =
    [
        "crumbly",
        "springy",
        "spongy",
        "rubbery",
        "waxy",
        "greasy",
        "smooth",
        "rough",
        "hairy",
        "gritty",
        "grainy",
        "flaky",
        "chunky",
        "dense",
        "heavy",
        "light",
        "loose",
        "matted",
        "thin",
        "thick",
        "bendy",
        "warm",
        "cool",
        "cold",
    ];

    /// <summary>fresh, wilted, dry and aged.</summary>
    public static ImmutableArray<string> Freshnesses { get; } = ["fresh", "wilted", "dry", "aged"];

    /// <summary>leafy, stemmy, woody, fruity, seedy, papery, manure, meal and soily.</summary>
    public static ImmutableArray<string> Kinds { get; } =
    ["leafy", "stemmy", "woody", "fruity", "seedy", "papery", "manure", "meal", "soily"];

    /// <summary>The colours known.</summary>
    public static ImmutableArray<string> Colours { get; } =
    [.. GreenWords, .. FadedWords, .. SilentColours];

    /// <summary>The words for how it feels.</summary>
    public static ImmutableArray<string> Feels { get; } =
    [.. MoistureBands.Select(b => b.Word), .. ToughWords, .. TenderWords, .. SilentFeels];

    /// <summary>1 for a colour of living leaf, -1 for a faded one, 0 for one that tells nothing.</summary>
    internal static int Greenness(string colour) =>
        GreenWords.Contains(colour, StringComparer.Ordinal) ? 1
        : FadedWords.Contains(colour, StringComparer.Ordinal) ? -1
        : 0;

    /// <summary>1 for a tough feel, -1 for a tender one, 0 for a word about water.</summary>
    internal static int Toughness(string feel) =>
        ToughWords.Contains(feel, StringComparer.Ordinal) ? 1
        : TenderWords.Contains(feel, StringComparer.Ordinal) ? -1
        : 0;

    /// <summary>The moisture a feel stands for, % of wet mass; null for a word about toughness.</summary>
    internal static (double Low, double High)? Moisture(string feel)
    {
        foreach (var (word, low, high) in MoistureBands)
        {
            if (string.Equals(word, feel, StringComparison.Ordinal))
            {
                return (low, high);
            }
        }

        return null;
    }
}
