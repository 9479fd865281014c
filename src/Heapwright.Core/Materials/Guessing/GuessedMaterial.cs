using System.Collections.Immutable;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Materials.Guessing;

/// <summary>What unknown stuff may be like.</summary>
/// <param name="Material">A material with wide ranges; its id is <c>guess</c>.</param>
/// <param name="Pooled">How many materials of the library it was pooled from with the same kind and freshness.</param>
/// <param name="Families">How many families those belong to.</param>
/// <param name="Assumptions">What was assumed.</param>
public sealed record GuessedMaterial(
    Material Material,
    int Pooled,
    int Families,
    ImmutableArray<Reason> Assumptions
);
