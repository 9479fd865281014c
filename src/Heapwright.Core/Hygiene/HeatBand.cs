namespace Heapwright.Core.Hygiene;

/// <summary>The temperatures that a rule asks for.</summary>
/// <param name="LowestCelsius">The lowest, °C.</param>
/// <param name="MustExceed">Whether it must be exceeded ("above"); otherwise it counts itself ("at or above").</param>
/// <param name="HighestCelsius">The highest, °C, which counts itself; null if there is none.</param>
public readonly record struct HeatBand(
    double LowestCelsius,
    bool MustExceed = false,
    double? HighestCelsius = null
)
{
    // 131 °F is (131 - 32)/1.8 = 55 °C, whatever the last bit of the quotient; no thermometer shows a millionth.
    private const double Rounding = 1e-6;

    /// <summary>Whether a reading is inside.</summary>
    /// <param name="celsius">The reading, °C.</param>
    public bool Holds(double celsius) =>
        (MustExceed ? celsius > LowestCelsius + Rounding : celsius >= LowestCelsius - Rounding)
        && (HighestCelsius is not { } highest || celsius <= highest + Rounding);
}
