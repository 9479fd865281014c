using System.Collections.Immutable;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Materials.Stock;

/// <summary>A material after some days in store.</summary>
/// <param name="Material">The material as it is likely to be now.</param>
/// <param name="Spoiled">Whether the time within which it should be used is over.</param>
/// <param name="DaysLeft">Days until then; 0 when it is over, null if it keeps.</param>
/// <param name="Reasons">What happened to it, or will soon.</param>
public sealed record AgedMaterial(
    Material Material,
    bool Spoiled,
    double? DaysLeft,
    ImmutableArray<Reason> Reasons
);
