namespace Heapwright.Core.Diagnosis;

/// <summary>
/// What was not told although the field was answered: whoever says what troubles them would mostly have said the rest.
/// It weighs little, and is never named as a reason.
/// </summary>
/// <param name="field">The field.</param>
/// <param name="told">The words that were told.</param>
/// <param name="unsaid">The share in which a word holds and is left out.</param>
public sealed class UnsaidFact(SignField field, IEnumerable<string> told, double unsaid)
    : SignFact(field.Id, "")
{
    private readonly int[] at = field.PlacesOf(
        field.Words.Where(w => !told.Contains(w, StringComparer.Ordinal))
    );

    /// <inheritdoc/>
    public override bool IsAbsence => true;

    internal override bool DependsOn(int given) => field.DependsOn(given, at);

    internal override double Likelihood(ReadOnlySpan<sbyte> holding)
    {
        var all = 1.0;
        foreach (var word in at)
        {
            all *= 1 - (field.Chance(word, holding) * (1 - unsaid));
        }

        return all;
    }
}
