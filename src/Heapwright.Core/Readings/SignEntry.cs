using System.Collections.Immutable;
using Heapwright.Core.Materials.Measurements;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Readings;

/// <summary>What was squeezed, felt, smelt or seen at a heap, and who was met there; at least one of these.</summary>
public sealed record SignEntry : DiaryEntry
{
    /// <summary>What a handful did when squeezed, for each place it was taken from; each place once.</summary>
    /// <exception cref="ArgumentException">A place stands twice.</exception>
    public EquatableList<(SignPlace Place, SqueezeWord Word)> Squeeze
    {
        get;
        init => field = Once(value, v => v.Place, nameof(Squeeze));
    } = [];

    /// <summary>How warm it felt (see <see cref="SignWords.Feel"/>), for core and outside; each place once.</summary>
    /// <exception cref="ArgumentException">A place stands twice, is the base, or a word is not known.</exception>
    public EquatableList<(SignPlace Place, string Word)> Feel
    {
        get;
        init
        {
            Known([.. value.Select(v => v.Word)], SignWords.Feel, nameof(Feel));
            field = value.All(v => v.Place != SignPlace.Base)
                ? Once(value, v => v.Place, nameof(Feel))
                : throw new ArgumentException(
                    "core and outside are allowed, not base",
                    nameof(value)
                );
        }
    } = [];

    /// <summary>What it smelt of; see <see cref="SignWords.Smell"/>.</summary>
    /// <exception cref="ArgumentException">A word is not known or stands twice.</exception>
    public EquatableList<string> Smell
    {
        get;
        init => field = Known(value, SignWords.Smell, nameof(Smell));
    } = [];

    /// <summary>What was seen; see <see cref="SignWords.See"/>.</summary>
    /// <exception cref="ArgumentException">A word is not known or stands twice.</exception>
    public EquatableList<string> See
    {
        get;
        init => field = Known(value, SignWords.See, nameof(See));
    } = [];

    /// <summary>Who was met; see <see cref="SignWords.Visitors"/>.</summary>
    /// <exception cref="ArgumentException">A word is not known or stands twice.</exception>
    public EquatableList<string> Visitors
    {
        get;
        init => field = Known(value, SignWords.Visitors, nameof(Visitors));
    } = [];

    /// <summary>Whether it tells anything.</summary>
    public bool IsEmpty =>
        Squeeze.Count + Feel.Count + Smell.Count + See.Count + Visitors.Count == 0;

    private static EquatableList<string> Known(
        EquatableList<string> words,
        ImmutableArray<string> known,
        string name
    )
    {
        foreach (var word in words)
        {
            if (!known.Contains(word, StringComparer.Ordinal))
            {
                throw new ArgumentException(
                    $"\"{word}\" is not known; {string.Join(", ", known)} are",
                    name
                );
            }
        }

        return name == nameof(Feel) ? words : Once(words, w => w, name);
    }

    private static EquatableList<T> Once<T, TKey>(
        EquatableList<T> words,
        Func<T, TKey> key,
        string name
    ) =>
        words.DistinctBy(key).Count() == words.Count
            ? words
            : throw new ArgumentException("something stands twice; once is enough", name);
}
