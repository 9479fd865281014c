namespace Heapwright.Core.Mixtures;

/// <summary>A published or practised range for a quantity of a mixture.</summary>
/// <param name="Quantity">The quantity, by its field name.</param>
/// <param name="Low">The lower end, in the unit of the quantity; null for none.</param>
/// <param name="High">The upper end; null for none.</param>
/// <param name="Source">A key of data/references.bib.</param>
public sealed record Aim(string Quantity, double? Low, double? High, string Source)
{
    /// <summary>Whether a value lies within, ends included.</summary>
    /// <param name="value">In the unit of the quantity.</param>
    public bool Holds(double value) =>
        value >= (Low ?? double.NegativeInfinity) && value <= (High ?? double.PositiveInfinity);
}
