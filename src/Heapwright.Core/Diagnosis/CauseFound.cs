using System.Collections.Immutable;

namespace Heapwright.Core.Diagnosis;

/// <summary>A cause with its probability and what speaks for it.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Probability">The chance that it holds; chances of causes need not add up to one.</param>
/// <param name="For">The facts that raise its odds, the strongest first.</param>
/// <param name="Against">The facts that lower its odds, the strongest first.</param>
public sealed record CauseFound(
    HeapCause Cause,
    double Probability,
    ImmutableArray<SignFact> For,
    ImmutableArray<SignFact> Against
)
{
    /// <summary>Keys of the publications behind it: first those that connect it with what was told.</summary>
    public IEnumerable<string> Sources =>
        For.SelectMany(f => f.SourcesFor(Cause.Id))
            .Concat(Cause.Sources)
            .Distinct(StringComparer.Ordinal);
}
