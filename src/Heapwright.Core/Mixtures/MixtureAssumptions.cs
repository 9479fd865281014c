using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Mixtures;

/// <summary>What is assumed where a property is not known; each use of it is said in the answer.</summary>
public static class MixtureAssumptions
{
    /// <summary>Filled volume over loose sum, where fines fall between the coarse; 5th, 50th and 95th percentile.</summary>
    /// <remarks>An estimate from the handbooks' 0.75 to 0.95 (from memory).</remarks>
    public static Spread MixingVolumeFactor { get; } = Spread.Of(0.75, 0.85, 0.95);

    /// <summary>
    /// Ash where it is not known, % of dry mass: what is left when volatile solids hold half their mass as carbon,
    /// kept within 2 to 95.
    /// </summary>
    /// <param name="carbon">Carbon, % of dry mass.</param>
    /// <remarks>Source: volatile solids hold 45 to 60 % carbon (Richard, Cornell, printed); 50 is taken.</remarks>
    public static double Ash(double carbon) => Math.Clamp(100 - (2 * carbon), 2, 95);

    /// <summary>Values for properties that are not known and need not be given.</summary>
    /// <param name="property">Any but nitrogen, carbon, moisture, bulk density and ash.</param>
    /// <returns>The value taken, in the unit of the property.</returns>
    /// <remarks>Estimates for stuff of which nothing is known.</remarks>
    public static double Value(MaterialProperty property) =>
        property switch
        {
            MaterialProperty.Lignin => 10,
            MaterialProperty.Phosphorus => 0.2,
            MaterialProperty.Potassium => 1,
            MaterialProperty.Fast => 20,
            MaterialProperty.StiffShare => 15,
            MaterialProperty.UnsupportedVolume => 60,
            _ => throw new ArgumentOutOfRangeException(
                nameof(property),
                property,
                "must be given; no value is assumed"
            ),
        };
}
