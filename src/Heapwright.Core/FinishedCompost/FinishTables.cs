using System.Collections.Immutable;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>The data that questions on finished compost rest on.</summary>
public sealed record FinishTables
{
    /// <summary>The scales.</summary>
    public required ImmutableArray<CompostScale> Scales { get; init; }

    /// <summary>How often signs are met at each stage.</summary>
    public required ImmutableArray<EvidenceRow> Evidence { get; init; }

    /// <summary>Single figures by their names.</summary>
    public required ImmutableDictionary<string, FinishFigure> Figures { get; init; }

    /// <summary>The crops.</summary>
    public required ImmutableArray<Crop> Crops { get; init; }

    /// <summary>The value of a figure.</summary>
    /// <param name="figure">Its name.</param>
    public Spread this[string figure] => Figures[figure].Value;
}
