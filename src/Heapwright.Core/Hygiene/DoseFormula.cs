namespace Heapwright.Core.Hygiene;

/// <summary>
/// An equation of a rule on time and temperature: D = coefficient / 10^(exponent · t), the days that a temperature t (°C)
/// must be kept.
/// </summary>
/// <param name="Id">Its name in the data.</param>
/// <param name="SolidsFromPercent">From which share of solids it holds, % of wet mass, itself included.</param>
/// <param name="SolidsBelowPercent">Below which share it holds; null if there is no end.</param>
/// <param name="LeastMinutes">The shortest time for which it holds, minutes.</param>
/// <param name="BelowMinutes">The time at which it ceases to hold, minutes; null if there is none.</param>
/// <param name="LowestCelsius">The lowest temperature for which it holds, °C.</param>
/// <param name="CoefficientDays">The coefficient, days.</param>
/// <param name="ExponentPerKelvin">The exponent, 1/K.</param>
public sealed record DoseFormula(
    string Id,
    double SolidsFromPercent,
    double? SolidsBelowPercent,
    double LeastMinutes,
    double? BelowMinutes,
    double LowestCelsius,
    double CoefficientDays,
    double ExponentPerKelvin
)
{
    /// <summary>How long a temperature must be kept, days.</summary>
    /// <param name="celsius">The temperature, °C.</param>
    public double DaysAt(double celsius) =>
        CoefficientDays / Math.Pow(10, ExponentPerKelvin * celsius);

    /// <summary>Whether it is for matter with so much solids.</summary>
    /// <param name="solidsPercent">Solids, % of wet mass; null if unknown, which counts as much.</param>
    public bool IsFor(double? solidsPercent) =>
        solidsPercent is { } solids
            ? solids >= SolidsFromPercent && !(solids >= SolidsBelowPercent)
            : SolidsBelowPercent is null;

    /// <summary>Whether it is for spells of such a length.</summary>
    /// <param name="hours">The length, hours.</param>
    public bool IsForSpell(double hours) =>
        hours >= (LeastMinutes / 60) - 1e-9 && !(hours >= (BelowMinutes / 60) - 1e-9);
}
