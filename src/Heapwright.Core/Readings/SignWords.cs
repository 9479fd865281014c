using System.Collections.Immutable;

namespace Heapwright.Core.Readings;

/// <summary>The words in which signs are told; they are those of the question <c>diagnose</c>.</summary>
public static class SignWords
{
    /// <summary>How warm it feels to the hand.</summary>
    public static ImmutableArray<string> Feel { get; } =
    ["cold", "cool", "warm", "hot", "too_hot_to_hold"];

    /// <summary>What it smells of.</summary>
    public static ImmutableArray<string> Smell { get; } =
    [
        "none",
        "earthy",
        "sweet",
        "sour",
        "ammonia",
        "rotten",
        "rotten_egg",
        "sewage",
        "manure",
        "alcohol",
        "smoke",
    ];

    /// <summary>What is seen.</summary>
    public static ImmutableArray<string> See { get; } =
    [
        "recognisable",
        "little_recognisable",
        "crumbly",
        "dark",
        "fine",
        "gritty",
        "matted",
        "packed",
        "clumps",
        "slimy",
        "liquid",
        "springy",
        "long_stalks",
        "tough_stuff_left",
        "soft_stuff_gone",
        "fresh_inside",
        "layers_of_one_thing",
        "dry_patches",
        "dust",
        "shrivelled",
        "frozen",
        "sunk",
        "white_ash",
        "white_threads",
        "white_fluff",
        "white_growth",
        "mould",
        "mushrooms",
        "steam",
        "smoke",
        "glow",
        "flames",
        "char",
        "ash",
        "seedlings",
        "thin_pale_shoots",
        "roots",
        "nest",
        "food_on_top",
        "scraps_taken",
        "curled_leaves_on_plants",
        "harm_only_where_used",
    ];

    /// <summary>Who was met.</summary>
    public static ImmutableArray<string> Visitors { get; } =
    [
        "flies",
        "small_flies",
        "maggots",
        "ants",
        "wasps",
        "worms",
        "worms_climbing",
        "rats",
        "mice",
        "large_animals",
    ];
}
