using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.Core.Readings;

namespace Heapwright.App.Contract;

/// <summary>The words of the question <c>diagnose</c> that have no other home.</summary>
internal static class DiagnoseWords
{
    /// <summary>The words of smell that a nose does not welcome.</summary>
    public static ImmutableArray<string> BadSmells { get; } =
    [.. SignWords.Smell.Where(w => w is not ("none" or "earthy" or "sweet"))];

    public static ImmutableArray<string> Deeds { get; } =
    [
        "turn",
        "water",
        "add",
        "add_greens",
        "add_browns",
        "adjust_mix",
        "add_starter",
        "add_worms",
        "cover",
        "shred",
        "move",
    ];

    public static ImmutableArray<string> Results { get; } =
    ["hotter", "cooler", "no_change", "smell_gone", "worse", "unknown"];

    public static ImmutableArray<string> Shares { get; } = ["only", "most", "some", "little"];

    public static ImmutableArray<string> Spots { get; } = ["core", "side", "top", "base"];

    /// <summary>What worries, without the word for nothing.</summary>
    public static ImmutableArray<string> Worries => Words("worry");

    /// <summary>The words of a field of the table of signs.</summary>
    /// <param name="field">The field.</param>
    public static ImmutableArray<string> Words(string field) =>
        SignModelReader.Model.Field(field).Words;
}
