namespace Heapwright.Core.Recipes;

/// <summary>A range that a quantity must keep or is aimed at.</summary>
/// <param name="Low">The lower end, in the unit of the quantity; null for none.</param>
/// <param name="High">The upper end; null for none.</param>
/// <param name="IsCondition">Whether the asker made it a condition; otherwise it is an aim that advises.</param>
public sealed record Band(double? Low, double? High, bool IsCondition)
{
    /// <summary>Whether a value lies within, ends included up to rounding.</summary>
    /// <param name="value">In the unit of the quantity.</param>
    public bool Holds(double value)
    {
        var slack = 1e-9 * Math.Max(1, Math.Abs(value));
        return value >= (Low ?? double.NegativeInfinity) - slack
            && value <= (High ?? double.PositiveInfinity) + slack;
    }
}
