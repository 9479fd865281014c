using System.Collections.Immutable;

namespace Heapwright.App.Contract;

/// <summary>Reads a free description, such as "brown and crisp", word by word.</summary>
internal static class DescribingWords
{
    private static readonly string[] Fillers =
    [
        "and",
        "or",
        "a",
        "bit",
        "very",
        "quite",
        "rather",
        "slightly",
        "with",
        "to",
    ];

    /// <summary>The words of a text, all of them known; empty where the field is absent.</summary>
    /// <param name="field">The field, or null.</param>
    /// <param name="known">The words known.</param>
    /// <exception cref="InputProblem">Not a text, or a word is not known.</exception>
    public static ImmutableArray<string> Read(Input? field, ImmutableArray<string> known)
    {
        if (field is not { } text)
        {
            return [];
        }

        var words = text.Text(100)
            .ToLowerInvariant()
            .Split(
                [' ', ',', ';', '-', '/', '\t', '.'],
                StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
            );
        var read = ImmutableArray.CreateBuilder<string>();
        foreach (var word in words.Except(Fillers, StringComparer.Ordinal))
        {
            var meant = Plain(word, known);
            read.Add(
                meant
                    ?? throw text.Problem(
                        $"the word \"{word}\" is not known here; the nearest is \"{Nearest.Of(word, known.AsSpan())}\" (known: {string.Join(", ", known)})"
                    )
            );
        }

        return read.ToImmutable();
    }

    // "brownish" and "greeny" are the colours with less conviction; the ranges are wide enough for both.
    private static string? Plain(string word, ImmutableArray<string> known) =>
        known.FirstOrDefault(k =>
            string.Equals(k, word, StringComparison.Ordinal)
            || string.Equals(k + "ish", word, StringComparison.Ordinal)
            || string.Equals(k + "y", word, StringComparison.Ordinal)
        );
}
