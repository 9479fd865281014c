using System.Collections.Immutable;

namespace Heapwright.Core.Reasons;

/// <summary>
/// Why something is so, as data: a code and its values. The words are put to it where it is shown, in the language of
/// the person who reads it (App/Texts).
/// </summary>
/// <param name="Code">The code, such as <c>mixture.too_wet</c>; every code has a sentence in App/Texts.</param>
/// <param name="Values">Names and numbers for the places {0}, {1}, … of the sentence; numbers in SI or percent.</param>
public sealed record Reason(string Code, ImmutableArray<object> Values)
{
    /// <summary>A reason with its values.</summary>
    /// <param name="code">The code.</param>
    /// <param name="values">The values, in the order of the sentence's places.</param>
    public static Reason Of(string code, params object[] values) => new(code, [.. values]);

    /// <summary>Whether code and values are the same.</summary>
    /// <param name="other">The other reason.</param>
    public bool Equals(Reason? other) =>
        other is not null
        && string.Equals(Code, other.Code, StringComparison.Ordinal)
        && Values.SequenceEqual(other.Values);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Code, Values.Length);
}
