namespace Heapwright.Core.Diagnosis;

/// <summary>That of several signs none was found.</summary>
/// <param name="field">The field.</param>
/// <param name="said">The word that says so.</param>
/// <param name="words">The signs that were not found.</param>
/// <param name="overlooked">The share in which one is there and not noticed.</param>
public sealed class NoneFact(
    SignField field,
    string said,
    IEnumerable<string> words,
    double overlooked = 0.25
) : SignFact(field.Id, said)
{
    private readonly int[] at = field.PlacesOf(words);

    /// <inheritdoc/>
    public override bool IsAbsence => true;

    internal override bool DependsOn(int given) => field.DependsOn(given, at);

    internal override double Likelihood(ReadOnlySpan<sbyte> holding)
    {
        var all = 1.0;
        foreach (var word in at)
        {
            all *= 1 - field.Chance(word, holding);
        }

        return all + ((1 - all) * overlooked);
    }
}
