using System.Collections.Immutable;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Materials.Measurements;

/// <summary>A person's own stuff after its measurements.</summary>
/// <param name="Material">The material with what is known now; the library keeps its own.</param>
/// <param name="Changes">What changed, property by property.</param>
/// <param name="Remarks">What to look at again: a value far from what such material has, a test that tells little.</param>
public sealed record SharpenedMaterial(
    Material Material,
    ImmutableArray<PropertyChange> Changes,
    ImmutableArray<Reason> Remarks
);
