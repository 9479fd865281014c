namespace Heapwright.Core.Diagnosis;

/// <summary>Words of two fields that cannot both be right.</summary>
/// <param name="Field">One field.</param>
/// <param name="Words">Its words.</param>
/// <param name="OtherField">The other field; may be the same.</param>
/// <param name="OtherWords">Its words.</param>
public sealed record SignClash(
    string Field,
    IReadOnlyList<string> Words,
    string OtherField,
    IReadOnlyList<string> OtherWords
)
{
    /// <summary>Whether two facts clash; what was not found clashes with nothing.</summary>
    /// <param name="one">A fact.</param>
    /// <param name="other">Another.</param>
    public bool IsBetween(SignFact one, SignFact other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        return (Has(one, Field, Words) && Has(other, OtherField, OtherWords))
            || (Has(other, Field, Words) && Has(one, OtherField, OtherWords));
    }

    private static bool Has(SignFact fact, string field, IReadOnlyList<string> words) =>
        fact.Place == field
        && words.Contains(fact.Word, StringComparer.Ordinal)
        && (!fact.IsAbsence || fact.Word == "none");
}
