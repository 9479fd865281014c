namespace Heapwright.Core.FinishedCompost;

/// <summary>One class of a published scale: between which values it lies, and what it keeps the compost from.</summary>
/// <param name="Name">Its name on the scale, such as <c>IV</c>.</param>
/// <param name="Low">The lower end; null where there is none.</param>
/// <param name="HoldsLow">Whether the lower end itself belongs to it.</param>
/// <param name="High">The upper end; null where there is none.</param>
/// <param name="HoldsHigh">Whether the upper end itself belongs to it.</param>
/// <param name="Limits">What compost of this class is not fit for, and for what only with care (our judgement).</param>
public sealed record ScaleClass(
    string Name,
    double? Low,
    bool HoldsLow,
    double? High,
    bool HoldsHigh,
    UseLimits Limits
)
{
    /// <summary>Whether a value belongs to this class.</summary>
    /// <param name="value">In the unit of the scale.</param>
    public bool Holds(double value) =>
        (Low is not { } low || value > low || (HoldsLow && value == low))
        && (High is not { } high || value < high || (HoldsHigh && value == high));
}
