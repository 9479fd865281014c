using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>A figure on finished compost that is used where nothing better is known.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Value">The figure.</param>
/// <param name="Source">The key of its source in data/references.bib.</param>
/// <param name="Citation">Where it stands, in words.</param>
/// <param name="Kind">How it came to be known.</param>
public sealed record FinishFigure(
    string Id,
    Spread Value,
    string Source,
    string Citation,
    EvidenceKind Kind
);
