namespace Heapwright.Core.Diagnosis;

/// <summary>Words that say nearly the same: told together they count as one sign.</summary>
/// <param name="Group">What they are called together.</param>
/// <param name="Field">The field of the question.</param>
/// <param name="Words">Its words, two or more.</param>
public sealed record SameSign(string Group, string Field, IReadOnlyList<string> Words)
{
    /// <summary>Whether a fact tells one of the words; what was looked for and not found is no such fact.</summary>
    /// <param name="fact">The fact.</param>
    public bool IsTold(SignFact fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return !fact.IsAbsence
            && fact.Place == Field
            && Words.Contains(fact.Word, StringComparer.Ordinal);
    }
}
