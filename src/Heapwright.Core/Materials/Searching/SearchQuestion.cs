namespace Heapwright.Core.Materials.Searching;

/// <summary>One search: the words of the question compared with the whole vocabulary, then with every name.</summary>
internal sealed class SearchQuestion
{
    private const double LeastScore = 0.4;

    private readonly SearchIndex index;
    private readonly List<string> plain;
    private readonly KnownWord[] asked;
    private readonly double[] weights;
    private readonly bool[] describes;
    private readonly double[][] alike;
    private readonly double[][] joinedAlike;

    public SearchQuestion(SearchIndex index, string text)
    {
        this.index = index;
        plain = WordForms.Plain(text);
        var stems = plain.ConvertAll(WordForms.Stem);
        asked = [.. stems.ConvertAll(KnownWord.Of)];
        weights = new double[stems.Count];
        describes = new bool[stems.Count];
        alike = new double[stems.Count][];
        for (var i = 0; i < alike.Length; i++)
        {
            weights[i] = index.WeightOf(stems[i]);
            describes[i] = WordForms.Describes(stems[i]);
            alike[i] = Compare(asked[i]);
        }

        joinedAlike = new double[Math.Max(0, stems.Count - 1)][];
        for (var i = 0; i < joinedAlike.Length; i++)
        {
            joinedAlike[i] = Compare(KnownWord.Of(stems[i] + stems[i + 1]));
        }
    }

    /// <summary>All materials that fit, best first; equal ones in the order of the library.</summary>
    public List<SearchHit> Rank()
    {
        var hits = new List<SearchHit>();
        if (weights.Length == 0)
        {
            return hits;
        }

        var phrases = index.Phrases;
        for (var first = 0; first < phrases.Length; )
        {
            var end = first;
            while (end < phrases.Length && phrases[end].Material == phrases[first].Material)
            {
                end++;
            }

            if (Best(new ReadOnlySpan<SearchPhrase>(phrases, first, end - first)) is { } hit)
            {
                hits.Add(hit);
            }

            first = end;
        }

        hits.Sort(
            static (a, b) =>
                b.Tier != a.Tier ? b.Tier.CompareTo(a.Tier)
                : b.Order.CompareTo(a.Order) is not 0 and var order ? order
                : a.Material.CompareTo(b.Material)
        );
        return hits;
    }

    private SearchHit? Best(ReadOnlySpan<SearchPhrase> names)
    {
        var tier = 0;
        var best = 0.0;
        var throughout = 0.0;
        // How well each word of the question is found in the best name, and in any name of this material.
        Span<double> found = stackalloc double[weights.Length];
        Span<double> anywhere = stackalloc double[weights.Length];
        Span<double> inBest = stackalloc double[weights.Length];
        foreach (var name in names)
        {
            tier = Math.Max(tier, TierOf(name));
            var fit = FitOf(name, found);
            var share = Share(found, namingOnly: false);
            var score = name.Worth * (share * fit);
            throughout += share / names.Length;
            for (var i = 0; i < found.Length; i++)
            {
                anywhere[i] = Math.Max(anywhere[i], name.Worth * found[i]);
            }

            if (score > best)
            {
                best = score;
                found.CopyTo(inBest);
            }
        }

        var total = (0.85 * best) + (0.15 * Share(anywhere, namingOnly: false));
        return tier > 0 || total >= LeastScore
            ? new SearchHit(
                names[0].Material,
                tier,
                total,
                Share(inBest, namingOnly: true),
                throughout
            )
            : null;
    }

    private int TierOf(SearchPhrase name)
    {
        // The same words are the same stems, and the same stems are of the same kin.
        if (name.Worth < 0.9 || !IsMadeOf(name, w => w.Head))
        {
            return 0;
        }

        return !IsMadeOf(name, w => w.Stem) ? 1
            : !plain.SequenceEqual(WordForms.Plain(name.Text), StringComparer.Ordinal) ? 2
            : 3;
    }

    // Whether a name has the words of the question and no other, in any order.
    private bool IsMadeOf(SearchPhrase name, Func<KnownWord, string> part)
    {
        if (name.Words.Length != asked.Length)
        {
            return false;
        }

        foreach (var word in asked)
        {
            var sought = part(word);
            var over = 0;
            for (var i = 0; i < asked.Length; i++)
            {
                over += part(asked[i]) == sought ? 1 : 0;
                over -= part(index.Vocabulary[name.Words[i]]) == sought ? 1 : 0;
            }

            if (over != 0)
            {
                return false;
            }
        }

        return true;
    }

    // Finds the words of the question in a name; of two names that hold them, the one with less besides fits better.
    private double FitOf(SearchPhrase name, Span<double> found)
    {
        found.Clear();
        Span<double> covered = stackalloc double[name.Words.Length];
        for (var i = 0; i < alike.Length; i++)
        {
            for (var j = 0; j < name.Words.Length; j++)
            {
                Raise(ref found[i], alike[i][name.Words[j]]);
                Raise(ref covered[j], alike[i][name.Words[j]]);
            }

            for (var j = 0; j < name.Joined.Length; j++)
            {
                var likeness = Close(alike[i][name.Joined[j]]);
                Raise(ref found[i], likeness);
                Raise(ref covered[j], likeness);
                Raise(ref covered[j + 1], likeness);
            }
        }

        for (var i = 0; i < joinedAlike.Length; i++)
        {
            for (var j = 0; j < name.Words.Length; j++)
            {
                var likeness = Close(joinedAlike[i][name.Words[j]]);
                Raise(ref found[i], likeness);
                Raise(ref found[i + 1], likeness);
                Raise(ref covered[j], likeness);
            }
        }

        var sum = 0.0;
        var all = 0.0;
        for (var j = 0; j < covered.Length; j++)
        {
            // A name left half unsaid fits less, even if what is left unsaid only describes: green manure is no manure.
            var weight = Math.Max(0.7, index.Weights[name.Words[j]]);
            sum += weight * covered[j];
            all += weight;
        }

        return 0.65 + (0.35 * sum / all);
    }

    private double Share(ReadOnlySpan<double> found, bool namingOnly)
    {
        var sum = 0.0;
        var all = 0.0;
        for (var i = 0; i < found.Length; i++)
        {
            var weight = namingOnly && describes[i] ? 0 : weights[i];
            sum += weight * found[i];
            all += weight;
        }

        return all > 0 ? sum / all : 0;
    }

    private double[] Compare(KnownWord word)
    {
        var row = new double[index.Vocabulary.Length];
        for (var v = 0; v < row.Length; v++)
        {
            row[v] = Slips.Likeness(word, index.Vocabulary[v]);
        }

        return row;
    }

    // Two words written as one are taken only when they are the same letters, or nearly.
    private static double Close(double likeness) => likeness >= 0.85 ? 0.97 * likeness : 0;

    private static void Raise(ref double value, double candidate) =>
        value = Math.Max(value, candidate);
}
