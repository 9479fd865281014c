using System.Collections.Immutable;

namespace Heapwright.Core.Diagnosis;

/// <summary>Something that may explain the signs of a heap.</summary>
/// <param name="Id">Its id, such as <c>too_dry</c>.</param>
/// <param name="Group">Its kind.</param>
/// <param name="Chance">The share of worried reports in which it holds; 0 for a stage, which has a table of its own.</param>
/// <param name="IsHealthy">Whether nothing needs changing where it is all that is found.</param>
/// <param name="Cautions">Codes of the cautions that belong to it.</param>
/// <param name="Sources">Keys of data/references.bib of publications that name this cause.</param>
public sealed record HeapCause(
    string Id,
    CauseGroup Group,
    double Chance,
    bool IsHealthy,
    ImmutableArray<string> Cautions,
    ImmutableArray<string> Sources
)
{
    /// <summary>Whether a heap of which it holds may be on fire.</summary>
    public bool MayBurn => Id is "fire_risk" or "lit_from_outside";
}
