namespace Heapwright.Core.Quantities;

/// <summary>Water as a share of the wet mass; a type of its own so that wet and dry basis cannot be confused.</summary>
public readonly record struct WetBasisMoisture
{
    private WetBasisMoisture(double fraction) => Fraction = fraction;

    /// <summary>kg of water per kg of wet matter, 0 to 1.</summary>
    public double Fraction { get; }

    /// <summary>Percent of the wet mass, 0 to 100.</summary>
    public double Percent => Fraction * 100;

    /// <summary>kg of water per kg of dry matter (dry basis); infinite for pure water.</summary>
    public double WaterPerDryMass => Fraction / (1 - Fraction);

    /// <summary>From percent of the wet mass.</summary>
    /// <param name="percent">0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside 0 to 100.</exception>
    public static WetBasisMoisture FromPercent(double percent)
    {
        if (!(percent is >= 0 and <= 100))
        {
            throw new ArgumentOutOfRangeException(
                nameof(percent),
                percent,
                "0 to 100 % of the wet mass is allowed"
            );
        }

        return new WetBasisMoisture(percent / 100);
    }

    /// <summary>From a sample weighed before and after drying.</summary>
    /// <param name="wet">The mass of the sample as it was; positive.</param>
    /// <param name="dry">The mass after drying to constant weight, in the same unit; 0 to <paramref name="wet"/>.</param>
    /// <remarks>Source: Trautmann and Richard, Cornell Composting, "Moisture content" (printed).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The masses are not 0 ≤ dry ≤ wet with wet above 0.</exception>
    public static WetBasisMoisture FromDrying(double wet, double dry)
    {
        if (!(wet > 0) || !(dry >= 0) || dry > wet)
        {
            throw new ArgumentOutOfRangeException(
                nameof(dry),
                dry,
                "0 ≤ dry ≤ wet and wet above 0 are needed"
            );
        }

        return new WetBasisMoisture((wet - dry) / wet);
    }
}
