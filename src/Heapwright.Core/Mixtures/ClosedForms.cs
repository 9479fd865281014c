namespace Heapwright.Core.Mixtures;

/// <summary>
/// The closed forms of mixing two materials, or a material and water. Masses are wet, in kg; a negative or infinite
/// answer means that the target lies outside what the two can reach, and is returned as it is. What differs from the
/// target by no more than rounding has the target.
/// </summary>
public static class ClosedForms
{
    private const double Rounding = 1e-12;

    /// <summary>The wet mass of a second material that brings the mixture to a moisture.</summary>
    /// <param name="firstMass">Wet mass of the first, kg.</param>
    /// <param name="firstMoisture">Moisture of the first, % of wet mass.</param>
    /// <param name="secondMoisture">Moisture of the second, % of wet mass.</param>
    /// <param name="target">Moisture wanted, % of wet mass.</param>
    /// <returns>kg: Q₂ = Q₁ (G − M₁)/(M₂ − G).</returns>
    /// <remarks>Source: Trautmann and Richard, Cornell Composting, "Moisture content" (printed).</remarks>
    public static double SecondMassForMoisture(
        double firstMass,
        double firstMoisture,
        double secondMoisture,
        double target
    ) => Divide(firstMass * Difference(target, firstMoisture), Difference(secondMoisture, target));

    /// <summary>The wet mass of a second material that brings the mixture to a carbon to nitrogen ratio.</summary>
    /// <param name="first">Carbon, nitrogen and dry mass of the first, kg.</param>
    /// <param name="second">Carbon, nitrogen and dry mass of one kg (wet) of the second.</param>
    /// <param name="target">kg C per kg N wanted.</param>
    /// <returns>kg: the mass m with C₁ + m c₂ = R (N₁ + m n₂).</returns>
    /// <remarks>Source: Richard and Trautmann, Cornell Composting, "C/N ratio" (formula from memory), here as a balance.</remarks>
    public static double SecondMassForRatio(MassBalance first, MassBalance second, double target) =>
        Divide(
            Difference(first.Carbon, target * first.Nitrogen),
            Difference(target * second.Nitrogen, second.Carbon)
        );

    /// <summary>The water that brings a mixture to a moisture.</summary>
    /// <param name="wetMass">kg.</param>
    /// <param name="water">kg of water in it.</param>
    /// <param name="target">Moisture wanted, % of wet mass, below 100.</param>
    /// <returns>kg: W = (G Q − 100 w)/(100 − G); negative if it is wetter already.</returns>
    public static double WaterForMoisture(double wetMass, double water, double target) =>
        Difference(target * wetMass, 100 * water) / (100 - target);

    /// <summary>
    /// The amounts of two unknowns that bring a fixed mixture to a ratio and a moisture at once.
    /// </summary>
    /// <param name="fixedPart">What is there, kg.</param>
    /// <param name="a">One kg (wet) of the first unknown.</param>
    /// <param name="b">One kg (wet) of the second unknown; pure water is a balance of wet mass 1 and nothing else.</param>
    /// <param name="ratio">kg C per kg N wanted.</param>
    /// <param name="moisture">Moisture wanted, % of wet mass.</param>
    /// <returns>kg of each; NaN where the two cannot be told apart (the equations are dependent).</returns>
    /// <remarks>Source: Richard, Cornell Composting, "Solving the equations simultaneously" (printed): two linear equations.</remarks>
    public static (double First, double Second) TwoUnknowns(
        MassBalance fixedPart,
        MassBalance a,
        MassBalance b,
        double ratio,
        double moisture
    )
    {
        double Carbon(MassBalance m) => Difference(m.Carbon, ratio * m.Nitrogen);
        double Wet(MassBalance m) => Difference(100 * m.Water, moisture * m.WetMass);
        var (a1, b1, r1) = (Carbon(a), Carbon(b), -Carbon(fixedPart));
        var (a2, b2, r2) = (Wet(a), Wet(b), -Wet(fixedPart));
        var determinant = (a1 * b2) - (b1 * a2);
        var scale = (Math.Abs(a1 * b2) + Math.Abs(b1 * a2)) * Rounding;
        return Math.Abs(determinant) <= scale
            ? (double.NaN, double.NaN)
            : (
                Difference(r1 * b2, b1 * r2) / determinant + 0.0,
                Difference(a1 * r2, r1 * a2) / determinant + 0.0
            );
    }

    private static double Difference(double a, double b) =>
        Math.Abs(a - b) <= Rounding * (Math.Abs(a) + Math.Abs(b)) ? 0 : a - b;

    // 0/0 is 0: what already has the target needs nothing.
    private static double Divide(double top, double bottom) => top == 0 ? 0 : top / bottom;
}
