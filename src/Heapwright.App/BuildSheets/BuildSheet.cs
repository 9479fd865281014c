using System.Collections.Immutable;
using Heapwright.App.Texts;
using Heapwright.Core.BuildPlans;

namespace Heapwright.App.BuildSheets;

/// <summary>A build plan with the sentences that belong on its sheet.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Assumptions">What was assumed.</param>
/// <param name="Cautions">The cautions that belong to these very materials.</param>
public sealed record BuildSheet(
    BuildPlan Plan,
    ImmutableArray<string> Assumptions,
    ImmutableArray<SheetCaution> Cautions
)
{
    /// <summary>The name of the heap or bay, if it has one.</summary>
    public string? Name { get; init; }

    /// <summary>The measures to show it in.</summary>
    public Measures Measures { get; init; } = Measures.Metric;
}
