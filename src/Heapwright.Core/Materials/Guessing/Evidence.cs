using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Materials.Guessing;

/// <summary>How likely what is seen and felt would be, were a property of the stuff known.</summary>
/// <remarks>
/// All numbers here are our own estimates. Nothing seen or felt ever rules a value out: a floor remains, because people
/// differ in what they call damp, and colours lie.
/// </remarks>
internal static class Evidence
{
    // Green leaf holds about 2 to 4 % nitrogen, fallen leaf and straw below 1.2 (from memory; common figures).
    private const double GreenNitrogen = 1.5;
    private const double GreenSharpness = 0.35;
    private const double ColourFloor = 0.15;

    private const double ToughLignin = 10;
    private const double ToughSharpness = 0.5;
    private const double ToughFloor = 0.2;

    private const double BandSharpness = 8;
    private const double BandFloor = 0.03;

    // A living leaf feels dry with three quarters of it water: on fresh plants a feel tells little.
    private const double LivingSharpness = 15;
    private const double LivingFloor = 0.25;

    /// <summary>The likelihood of the description for a value of a property; null where it tells nothing about it.</summary>
    /// <param name="seen">The description.</param>
    /// <param name="property">The property.</param>
    public static Func<double, double>? For(LookAndFeel seen, MaterialProperty property) =>
        property switch
        {
            MaterialProperty.Nitrogen when Greenness(seen) is not 0 and var green => value =>
                Step(Math.Log(value / GreenNitrogen) / GreenSharpness, green, ColourFloor),
            MaterialProperty.Lignin when Toughness(seen) is not 0 and var tough => value =>
                Step(Math.Log(value / ToughLignin) / ToughSharpness, tough, ToughFloor),
            MaterialProperty.Moisture when Bands(seen) is { Length: > 0 } bands => value =>
                InBands(value, bands, IsLiving(seen)),
            _ => null,
        };

    private static bool IsLiving(LookAndFeel seen) =>
        seen.Freshness is "fresh" or "wilted"
        && seen.Kind is "leafy" or "stemmy" or "fruity" or "woody";

    // Only of leaf and stem does a colour tell whether the nitrogen is still in it.
    private static int Greenness(LookAndFeel seen) =>
        seen.Kind is "leafy" or "stemmy" ? Math.Sign(seen.Colour.Sum(LookWords.Greenness)) : 0;

    private static int Toughness(LookAndFeel seen) => Math.Sign(seen.Feel.Sum(LookWords.Toughness));

    private static (double Low, double High)[] Bands(LookAndFeel seen) =>
        [.. seen.Feel.Select(LookWords.Moisture).OfType<(double, double)>()];

    private static double Step(double z, int sign, double floor) =>
        floor + ((1 - floor) * NormalDistribution.Cumulative(sign * z));

    private static double InBands(double moisture, (double Low, double High)[] bands, bool living)
    {
        var sharpness = living ? LivingSharpness : BandSharpness;
        var floor = living ? LivingFloor : BandFloor;
        var product = 1.0;
        foreach (var (low, high) in bands)
        {
            // A band that reaches 0 or 100 has no edge there.
            var above = low <= 0 ? 1 : NormalDistribution.Cumulative((moisture - low) / sharpness);
            var below =
                high >= 100 ? 1 : NormalDistribution.Cumulative((high - moisture) / sharpness);
            product *= floor + ((1 - floor) * above * below);
        }

        return product;
    }
}
