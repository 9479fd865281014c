using System.Collections.Immutable;

namespace Heapwright.Core.Diagnosis;

/// <summary>
/// A field of the question and how its words depend on what holds. A field with one answer multiplies the share of each
/// word by the factors of all that holds and scales to a sum of one; a field of several words gives each word its own
/// chance: it shows unless nothing calls it up (noisy or), less the shares that are kept away.
/// </summary>
public sealed class SignField
{
    private readonly double[] start;
    private readonly double[][] byGiven;
    private readonly double[][] keptByGiven;
    private readonly bool[] touched;

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
        Sources = rows.Where(r => r.Sources.Count > 0)
            .ToLookup(r => (r.Word, r.Given), r => r.Sources);
        start = new double[Words.Length];
        byGiven = Table(givens.Count, HasOneAnswer ? 1 : 0);
        keptByGiven = Table(givens.Count, 1);
        touched = new bool[givens.Count];
        foreach (var row in rows)
        {
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

            touched[given] = true;
            var table = row.Effect == SignEffect.KeepsAway ? keptByGiven : byGiven;
            table[given][word] = row.Effect == SignEffect.KeepsAway ? 1 - row.Value : row.Value;
        }
    }

    /// <summary>The field of the question.</summary>
    public string Id { get; }

    /// <summary>Its words, in the order of the table.</summary>
    public ImmutableArray<string> Words { get; }

    /// <summary>Whether just one of its words holds.</summary>
    public bool HasOneAnswer { get; }

    private ILookup<(string Word, string Given), IReadOnlyList<string>> Sources { get; }

    /// <summary>The publications that connect a word with a given.</summary>
    /// <param name="word">The word.</param>
    /// <param name="given">The given.</param>
    public IEnumerable<string> SourcesOf(string word, string given) =>
        Sources[(word, given)].SelectMany(s => s);

    /// <summary>The chance of each word.</summary>
    /// <param name="holding">What holds: indices of givens, negative for none.</param>
    /// <param name="chances">Where the chances go, one for each word.</param>
    internal void Chances(ReadOnlySpan<int> holding, Span<double> chances)
    {
        start.CopyTo(chances);
        if (HasOneAnswer)
        {
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

    /// <summary>Whether a given changes the chances of any word.</summary>
    internal bool DependsOn(int given) => touched[given];

    /// <summary>The factor by which a given multiplies a word; of a field with one answer.</summary>
    internal double Factor(int word, int given) => byGiven[given][word];

    /// <summary>The chance that one of several words shows.</summary>
    internal double Chance(int word, ReadOnlySpan<int> holding)
    {
        var (hidden, kept) = (1 - start[word], 1.0);
        foreach (var given in holding)
        {
            if (given >= 0 && touched[given])
            {
                hidden *= 1 - byGiven[given][word];
                kept *= keptByGiven[given][word];
            }
        }

        return (1 - hidden) * kept;
    }

    private void Multiplied(ReadOnlySpan<int> holding, Span<double> chances)
    {
        foreach (var given in holding)
        {
            if (given < 0 || !touched[given])
            {
                continue;
            }

            var factors = byGiven[given];
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

    private static double[][] Table(int givens, double value)
    {
        var table = new double[givens][];
        for (var g = 0; g < givens; g++)
        {
            table[g] = new double[64];
            Array.Fill(table[g], value);
        }

        return table;
    }
}
