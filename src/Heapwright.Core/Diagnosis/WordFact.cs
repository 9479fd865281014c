namespace Heapwright.Core.Diagnosis;

/// <summary>A word that was told, or looked for and not found.</summary>
/// <param name="field">The field.</param>
/// <param name="word">One of its words.</param>
/// <param name="isAbsence">Whether it was looked for and not found.</param>
/// <param name="overlooked">The share in which it is there and not noticed.</param>
public sealed class WordFact(SignField field, string word, bool isAbsence, double overlooked = 0.2)
    : SignFact(field.Id, word)
{
    private readonly int at = field.Words.IndexOf(word);

    /// <inheritdoc/>
    public override bool IsAbsence => isAbsence;

    /// <inheritdoc/>
    public override IEnumerable<string> SourcesFor(string cause) =>
        isAbsence ? [] : field.SourcesOf(Word, cause);

    internal override bool DependsOn(int given) => field.DependsOn(given, at);

    internal override double Likelihood(ReadOnlySpan<sbyte> holding)
    {
        var chance = field.Chance(at, holding);
        return isAbsence ? 1 - (chance * (1 - overlooked)) : chance;
    }
}
