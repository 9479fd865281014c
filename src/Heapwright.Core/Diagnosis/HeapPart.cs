using Heapwright.Core.Materials;

namespace Heapwright.Core.Diagnosis;

/// <summary>A material in a heap, told roughly.</summary>
/// <param name="Material">The material of the library.</param>
/// <param name="Share">How much of the heap it is.</param>
/// <param name="StoredDays">Days it lay before it went in; null where nobody said.</param>
public sealed record HeapPart(Material Material, HeapShare Share, double? StoredDays);
