using System.Collections.Immutable;

namespace Heapwright.Core.Diagnosis;

/// <summary>
/// A field of the question and how its words depend on what holds. A field with one answer multiplies the share of each
/// word by the factors of all that holds and scales to a sum of one; a field of several words gives each word its own
/// chance: it shows unless nothing calls it up (noisy or), less the shares that are kept away.
/// </summary>
public sealed class SignField
{
    // Bare arrays and texts for keys: what a framework's table holds of our own small structs is compiled anew at every
    // start of the program.
    private readonly double[] start;
    private readonly double[]?[] byGiven;
    private readonly double[]?[] keptByGiven;
    private readonly Dictionary<string, List<string>> sources = new(StringComparer.Ordinal);

    internal SignField(
        string id,
        IReadOnlyList<SignRow> rows,
        IReadOnlyDictionary<string, int> givens
    )
    {
        Id = id;
        Words =
        [
            .. rows.Where(r => r.Effect is SignEffect.Often or SignEffect.Anyway)
                .Select(r => r.Word),
        ];
        HasOneAnswer = rows.Any(r => r.Effect == SignEffect.Often);
        start = new double[Words.Length];
        byGiven = new double[givens.Count][];
        keptByGiven = new double[givens.Count][];
        foreach (var row in rows)
        {
            AddSources(row);
            var word = Words.IndexOf(row.Word);
            if (word < 0)
            {
                throw new InvalidOperationException($"{id}: {row.Word} has no row of its own");
            }

            if (row.Effect is SignEffect.Often or SignEffect.Anyway)
            {
                start[word] = row.Value;
                continue;
            }

            if (!givens.TryGetValue(row.Given, out var given))
            {
                throw new InvalidOperationException($"{id}: {row.Given} is no cause");
            }

            var changes = byGiven[given] ??= Filled(HasOneAnswer ? 1 : 0);
            var kept = keptByGiven[given] ??= Filled(1);
            if (row.Effect == SignEffect.KeepsAway)
            {
                kept[word] = 1 - row.Value;
            }
            else
            {
                changes[word] = row.Value;
            }
        }
    }

    /// <summary>The field of the question.</summary>
    public string Id { get; }

    /// <summary>Its words, in the order of the table.</summary>
    public ImmutableArray<string> Words { get; }

    /// <summary>Whether just one of its words holds.</summary>
    public bool HasOneAnswer { get; }

    /// <summary>The publications that connect a word with a given.</summary>
    /// <param name="word">The word.</param>
    /// <param name="given">The given.</param>
    public IEnumerable<string> SourcesOf(string word, string given) =>
        sources.TryGetValue(Pair(word, given), out var found) ? found : [];

    /// <summary>The chance of each word.</summary>
    /// <param name="holding">What holds: indices of givens, negative for none.</param>
    /// <param name="chances">Where the chances go, one for each word.</param>
    internal void Chances(ReadOnlySpan<sbyte> holding, Span<double> chances)
    {
        if (HasOneAnswer)
        {
            for (var w = 0; w < chances.Length; w++)
            {
                chances[w] = start[w];
            }

            Multiplied(holding, chances);
        }
        else
        {
            for (var w = 0; w < chances.Length; w++)
            {
                chances[w] = Chance(w, holding);
            }
        }
    }

    /// <summary>The places of words among its words.</summary>
    internal int[] PlacesOf(IEnumerable<string> words)
    {
        var places = new List<int>();
        foreach (var word in words)
        {
            places.Add(Words.IndexOf(word));
        }

        return [.. places];
    }

    /// <summary>Whether a given changes the chances of any word.</summary>
    internal bool DependsOn(int given) => byGiven[given] is not null;

    /// <summary>Whether a given changes the chance of a word; of a field of several words.</summary>
    internal bool DependsOn(int given, int word) =>
        byGiven[given] is { } shows && (shows[word] != 0 || keptByGiven[given]![word] != 1);

    /// <summary>Whether a given changes the chance of any of some words; of a field of several words.</summary>
    internal bool DependsOn(int given, int[] words)
    {
        foreach (var word in words)
        {
            if (DependsOn(given, word))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The factor by which a given multiplies a word; of a field with one answer.</summary>
    internal double Factor(int word, int given) => byGiven[given]?[word] ?? 1;

    /// <summary>The chance that one of several words shows.</summary>
    internal double Chance(int word, ReadOnlySpan<sbyte> holding)
    {
        var (hidden, kept) = (1 - start[word], 1.0);
        foreach (var given in holding)
        {
            if (given >= 0 && byGiven[given] is { } shows)
            {
                hidden *= 1 - shows[word];
                kept *= keptByGiven[given]![word];
            }
        }

        return (1 - hidden) * kept;
    }

    private void Multiplied(ReadOnlySpan<sbyte> holding, Span<double> chances)
    {
        foreach (var given in holding)
        {
            if (given < 0 || byGiven[given] is not { } factors)
            {
                continue;
            }

            for (var w = 0; w < chances.Length; w++)
            {
                chances[w] *= factors[w];
            }
        }

        var sum = 0.0;
        foreach (var chance in chances)
        {
            sum += chance;
        }

        for (var w = 0; w < chances.Length; w++)
        {
            chances[w] /= sum;
        }
    }

    private void AddSources(SignRow row)
    {
        if (row.Sources.Count == 0)
        {
            return;
        }

        var pair = Pair(row.Word, row.Given);
        if (!sources.TryGetValue(pair, out var all))
        {
            sources[pair] = all = [];
        }

        all.AddRange(row.Sources);
    }

    private static string Pair(string word, string given) => word + " " + given;

    private double[] Filled(double value)
    {
        var row = new double[Words.Length];
        for (var w = 0; w < row.Length; w++)
        {
            row[w] = value;
        }

        return row;
    }
}
