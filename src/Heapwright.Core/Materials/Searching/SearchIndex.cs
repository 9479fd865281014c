namespace Heapwright.Core.Materials.Searching;

/// <summary>The names of all materials, taken apart once, so that a search only compares words.</summary>
internal sealed class SearchIndex
{
    // Words of everyday names count fully; the id and the shelf are for those who know the library.
    private const double NameWorth = 1;
    private const double IdWorth = 0.97;
    private const double ShelfWorth = 0.6;

    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);
    private readonly List<KnownWord> vocabulary = [];
    private readonly List<SearchPhrase> phrases = [];

    private SearchIndex(MaterialLibrary library, Action<SearchIndex, int, Material> addNames)
    {
        for (var i = 0; i < library.All.Length; i++)
        {
            addNames(this, i, library.All[i]);
        }

        Phrases = [.. phrases];
        Vocabulary = [.. vocabulary];
        Weights = WeightsOf(library.All.Length);
    }

    /// <summary>The names of the library itself, with ids and shelves.</summary>
    /// <param name="library">The library.</param>
    public static SearchIndex Of(MaterialLibrary library) =>
        new(
            library,
            (index, at, m) =>
            {
                index.Add(at, m.Name, NameWorth);
                index.AddAll(at, m.AlsoCalled);
                index.Add(at, Spaced(m.Id), IdWorth);
                index.Add(at, Spaced(m.Family), ShelfWorth);
                index.Add(at, Spaced(m.Group), ShelfWorth);
            }
        );

    /// <summary>The names that the materials have in other languages.</summary>
    /// <param name="library">The library.</param>
    /// <param name="elsewhere">The names of a material in other languages.</param>
    public static SearchIndex Elsewhere(
        MaterialLibrary library,
        Func<Material, IEnumerable<string>> elsewhere
    ) => new(library, (index, at, m) => index.AddAll(at, elsewhere(m)));

    /// <summary>All names, those of one material together.</summary>
    public SearchPhrase[] Phrases { get; }

    /// <summary>Every stem, and every two neighbouring stems in one word.</summary>
    public KnownWord[] Vocabulary { get; }

    /// <summary>How much each word of the vocabulary tells: rare words tell more, mere descriptions less.</summary>
    public double[] Weights { get; }

    /// <summary>The number of a word in the vocabulary, or -1.</summary>
    public int NumberOf(string stem) => numbers.TryGetValue(stem, out var number) ? number : -1;

    /// <summary>How much a word of the question tells.</summary>
    public double WeightOf(string stem)
    {
        var number = NumberOf(stem);
        return number >= 0 ? Weights[number]
            : WordForms.Describes(stem) ? 0.35
            : 1;
    }

    /// <summary>A code as words.</summary>
    public static string Spaced(string code) => code.Replace('_', ' ');

    private void AddAll(int material, IEnumerable<string> names)
    {
        foreach (var name in names)
        {
            Add(material, name, NameWorth);
        }
    }

    private void Add(int material, string text, double worth)
    {
        AddWords(material, text, worth);
        if (Transcribed(text) is { } typed)
        {
            AddWords(material, typed, worth);
        }
    }

    private void AddWords(int material, string text, double worth)
    {
        var plain = WordForms.Plain(text);
        if (plain.Count == 0)
        {
            return;
        }

        var stems = plain.ConvertAll(WordForms.Stem);
        var joined = new int[stems.Count - 1];
        for (var j = 0; j < joined.Length; j++)
        {
            joined[j] = Number(stems[j] + stems[j + 1]);
        }

        var words = new int[stems.Count];
        for (var i = 0; i < words.Length; i++)
        {
            words[i] = Number(stems[i]);
        }

        phrases.Add(new SearchPhrase(material, worth, text, words, joined));
    }

    // A keyboard without them types ae, oe and ue for the German letters.
    private static string? Transcribed(string text) =>
        text.AsSpan().IndexOfAny("äöüÄÖÜ") < 0
            ? null
            : text.Replace("ä", "ae", StringComparison.Ordinal)
                .Replace("ö", "oe", StringComparison.Ordinal)
                .Replace("ü", "ue", StringComparison.Ordinal)
                .Replace("Ä", "Ae", StringComparison.Ordinal)
                .Replace("Ö", "Oe", StringComparison.Ordinal)
                .Replace("Ü", "Ue", StringComparison.Ordinal);

    private int Number(string word)
    {
        if (!numbers.TryGetValue(word, out var number))
        {
            number = numbers.Count;
            numbers.Add(word, number);
            vocabulary.Add(KnownWord.Of(word));
        }

        return number;
    }

    private double[] WeightsOf(int materials)
    {
        var seen = new HashSet<int>[Vocabulary.Length];
        foreach (var phrase in Phrases)
        {
            foreach (var word in phrase.Words)
            {
                (seen[word] ??= []).Add(phrase.Material);
            }
        }

        var weights = new double[Vocabulary.Length];
        for (var i = 0; i < weights.Length; i++)
        {
            var rarity =
                Math.Log(1 + ((double)materials / Math.Max(1, seen[i]?.Count ?? 0)))
                / Math.Log(1 + materials);
            weights[i] = WordForms.Describes(Vocabulary[i].Stem) ? 0.35 : Math.Max(0.5, rarity);
        }

        return weights;
    }
}
