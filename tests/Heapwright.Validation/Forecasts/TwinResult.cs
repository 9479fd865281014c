namespace Heapwright.Validation.Forecasts;

/// <summary>What came of a heap.</summary>
/// <param name="Share">Held 72 hours at 55 °C, % of the matter.</param>
/// <param name="Minutes">Work.</param>
/// <param name="Turns">How often it was turned.</param>
public sealed record TwinResult(double Share, double Minutes, int Turns)
{
    /// <summary>What the aim counts: the share, less a tenth of a percent for a minute of work.</summary>
    public double Worth => Share - (0.1 * Minutes);
}
