using System.Collections.Immutable;

namespace Heapwright.Core.Materials.Guessing;

/// <summary>What can be seen and felt of stuff nobody can name.</summary>
public sealed record LookAndFeel
{
    private LookAndFeel(
        string freshness,
        string kind,
        ImmutableArray<string> colour,
        ImmutableArray<string> feel
    )
    {
        Freshness = freshness;
        Kind = kind;
        Colour = colour;
        Feel = feel;
    }

    /// <summary>fresh, wilted, dry or aged.</summary>
    public string Freshness { get; }

    /// <summary>leafy, stemmy, woody, fruity, seedy, papery, manure, meal or soily.</summary>
    public string Kind { get; }

    /// <summary>Words of <see cref="LookWords.Colours"/>; may be empty.</summary>
    public ImmutableArray<string> Colour { get; }

    /// <summary>Words of <see cref="LookWords.Feels"/>; may be empty.</summary>
    public ImmutableArray<string> Feel { get; }

    /// <summary>A description in known words.</summary>
    /// <param name="freshness">A word of <see cref="LookWords.Freshnesses"/>.</param>
    /// <param name="kind">A word of <see cref="LookWords.Kinds"/>.</param>
    /// <param name="colour">Words of <see cref="LookWords.Colours"/>; may be empty.</param>
    /// <param name="feel">Words of <see cref="LookWords.Feels"/>; may be empty.</param>
    /// <exception cref="ArgumentException">A word is not known.</exception>
    public static LookAndFeel Of(
        string freshness,
        string kind,
        IEnumerable<string> colour,
        IEnumerable<string> feel
    )
    {
        ImmutableArray<string> colours = [.. colour];
        ImmutableArray<string> feels = [.. feel];
        Check(freshness, LookWords.Freshnesses, nameof(freshness));
        Check(kind, LookWords.Kinds, nameof(kind));
        foreach (var word in colours)
        {
            Check(word, LookWords.Colours, nameof(colour));
        }

        foreach (var word in feels)
        {
            Check(word, LookWords.Feels, nameof(feel));
        }

        return new LookAndFeel(freshness, kind, colours, feels);
    }

    private static void Check(string word, ImmutableArray<string> known, string name)
    {
        if (!known.Contains(word, StringComparer.Ordinal))
        {
            throw new ArgumentException(
                $"\"{word}\" is not a known word; {string.Join(", ", known)} are",
                name
            );
        }
    }
}
