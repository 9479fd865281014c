using Heapwright.Core.Quantities;

namespace Heapwright.Core.Materials.Measurements;

/// <summary>What measurements changed about one property.</summary>
/// <param name="Property">The property.</param>
/// <param name="Before">What was known before, in the unit of the property.</param>
/// <param name="After">What is known now.</param>
public sealed record PropertyChange(MaterialProperty Property, Spread Before, Spread After);
