using Heapwright.Core.Materials;

namespace Heapwright.Core.Recipes;

/// <summary>A material that would mend a shortfall.</summary>
/// <param name="Material">The material.</param>
/// <param name="Litres">How much of it, loose.</param>
public sealed record ShortfallOption(Material Material, double Litres);
