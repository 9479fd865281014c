namespace Heapwright.Core.Materials;

/// <summary>Where a value comes from.</summary>
/// <param name="Field">The field it belongs to, such as <c>nitrogen_pct_db</c>.</param>
/// <param name="Source">A key of data/references.bib.</param>
/// <param name="Kind">How it came to be known.</param>
/// <param name="Note">What was decided where sources disagree; may be empty.</param>
public sealed record PropertySource(string Field, string Source, EvidenceKind Kind, string Note);
