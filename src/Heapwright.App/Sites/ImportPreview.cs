using System.Collections.Immutable;
using Heapwright.App.Changes;

namespace Heapwright.App.Sites;

/// <summary>What an import would do, before it does it.</summary>
/// <param name="Rows">For each kind: how many things are new, changed, or here already as they are.</param>
/// <param name="Refusal">Why the file cannot be brought in; null if it can.</param>
public sealed record ImportPreview(ImmutableArray<ImportRow> Rows, Refusal? Refusal)
{
    /// <summary>How many things would be written.</summary>
    public int Writes => Rows.Sum(r => r.New + r.Changed);
}
