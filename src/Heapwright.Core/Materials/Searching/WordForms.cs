using System.Globalization;
using System.Text;

namespace Heapwright.Core.Materials.Searching;

/// <summary>Brings anyone's words to one form: case, accents, punctuation, filler words, plural and spelling.</summary>
internal static class WordForms
{
    private const int MostLetters = 200;
    private const int MostWords = 12;
    private const char None = '\0';

    private static readonly HashSet<string> Fillers = new(StringComparer.Ordinal)
    {
        "a",
        "an",
        "and",
        "the",
        "of",
        "with",
        "from",
        "in",
        "on",
        "for",
        "or",
        "to",
        "at",
        "my",
        "our",
        "some",
        "this",
        "that",
        "these",
        "those",
        "bit",
        "bits",
        "lot",
        "lots",
        "very",
        // German.
        "und",
        "oder",
        "mit",
        "von",
        "vom",
        "aus",
        "im",
        "der",
        "die",
        "das",
        "ein",
        "eine",
        "einem",
    };

    // Words that say in what state or measure the stuff is: they help to choose, but name nothing by themselves.
    private static readonly HashSet<string> Descriptions = new(StringComparer.Ordinal)
    {
        "fresh",
        "dry",
        "dried",
        "wet",
        "damp",
        "moist",
        "soggy",
        "wilted",
        "old",
        "aged",
        "new",
        "young",
        "green",
        "brown",
        "yellow",
        "black",
        "white",
        "mixed",
        "raw",
        "clean",
        "loose",
        "shredded",
        "chopped",
        "torn",
        "cut",
        "mown",
        "fine",
        "coarse",
        "whole",
        "big",
        "large",
        "small",
        "little",
        "rotten",
        "rotting",
        "rotted",
        "bedded",
        "cooked",
        "used",
        "spent",
        "without",
        "no",
        "bag",
        "bale",
        "box",
        "bucket",
        "barrow",
        "load",
        "pile",
        "heap",
        "handful",
        "sack",
        "stuff",
        "material",
        "unknown",
        "kind",
        "home",
        // German, its letters without dots.
        "frisch",
        "frische",
        "trocken",
        "trockene",
        "getrocknete",
        "feucht",
        "nass",
        "welk",
        "welke",
        "alt",
        "alte",
        "verrottet",
        "verrottete",
        "gemischt",
        "lose",
        "grob",
        "fein",
        "grun",
        "gehackselt",
        "zerkleinert",
        "ohne",
        "eimer",
        "sack",
        "schubkarre",
    };

    // Plurals and spellings that no rule catches.
    private static readonly Dictionary<string, string> Irregular = new(StringComparer.Ordinal)
    {
        ["leaves"] = "leaf",
        ["leafs"] = "leaf",
        ["loaves"] = "loaf",
        ["mowed"] = "mown",
        ["mould"] = "mold",
        ["mouldy"] = "moldy",
        ["mice"] = "mouse",
        ["geese"] = "goose",
        ["spoilt"] = "spoiled",
        ["grey"] = "gray",
        ["fibre"] = "fiber",
        ["molasses"] = "molasses",
    };

    /// <summary>The words in plain lower-case letters and digits, fillers left out; nothing shortened.</summary>
    public static List<string> Plain(string text)
    {
        var words = new List<string>();
        // On the stack: the index takes thousands of names apart while somebody waits.
        Span<char> word = stackalloc char[4 * MostLetters];
        var length = 0;
        var shown = text.Length > MostLetters ? text[..MostLetters] : text;
        foreach (var letter in Decomposed(shown))
        {
            // What is taken apart may be longer than it was.
            if (char.IsLetterOrDigit(letter))
            {
                length +=
                    length + 2 > word.Length
                        ? 0
                        : Append(word[length..], char.ToLowerInvariant(letter));
            }
            else if (
                CharUnicodeInfo.GetUnicodeCategory(letter) != UnicodeCategory.NonSpacingMark
                && letter is not ('\'' or '\u2019')
            )
            {
                Take(words, word[..length]);
                length = 0;
            }
        }

        Take(words, word[..length]);
        return words;
    }

    /// <summary>One word in its singular and one spelling.</summary>
    public static string Stem(string word)
    {
        if (Irregular.TryGetValue(word, out var known))
        {
            return known;
        }

        if (word.Length > 5 && word.StartsWith("mould", StringComparison.Ordinal))
        {
            word = string.Concat("mold", word.AsSpan(5));
        }

        if (word.Length < 4 || !word.EndsWith('s') || Ends(word, "ss", "us", "is"))
        {
            return word;
        }

        if (word.Length > 4 && Ends(word, "ies"))
        {
            return word[..^3] + "y";
        }

        return Ends(word, "sses", "xes", "ches", "shes", "oes") ? word[..^2] : word[..^1];
    }

    /// <summary>Whether a stem only describes a state or a measure.</summary>
    public static bool Describes(string stem) =>
        Descriptions.Contains(stem) || stem.All(char.IsAsciiDigit);

    private static string Decomposed(string text)
    {
        try
        {
            return text.Normalize(NormalizationForm.FormD);
        }
        catch (ArgumentException)
        {
            // Half a surrogate pair cannot be decomposed; such a text is taken as it stands.
            return text;
        }
    }

    // How many letters were written.
    private static int Append(Span<char> word, char letter)
    {
        var (one, other) = letter switch
        {
            'ß' => ('s', 's'),
            'æ' => ('a', 'e'),
            'œ' => ('o', 'e'),
            'ø' => ('o', None),
            'ł' => ('l', None),
            _ => (letter, None),
        };
        word[0] = one;
        if (other == None)
        {
            return 1;
        }

        word[1] = other;
        return 2;
    }

    private static void Take(List<string> words, ReadOnlySpan<char> word)
    {
        if (word.Length > 0 && words.Count < MostWords)
        {
            var taken = word.ToString();
            if (!Fillers.Contains(taken))
            {
                words.Add(taken);
            }
        }
    }

    private static bool Ends(string word, params ReadOnlySpan<string> endings)
    {
        foreach (var ending in endings)
        {
            if (word.EndsWith(ending, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }
}
