using Heapwright.App.Changes;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Sites;

/// <summary>A value that is kept with its 5th, 50th and 95th percentile.</summary>
/// <param name="Low">The 5th percentile.</param>
/// <param name="Typical">The 50th percentile.</param>
/// <param name="High">The 95th percentile.</param>
public sealed record ValueRange(double Low, double Typical, double High)
{
    /// <summary>The range of a distribution.</summary>
    /// <param name="spread">The distribution.</param>
    public static ValueRange Of(Spread spread) => new(spread.Low, spread.Typical, spread.High);

    /// <summary>The distribution of the range.</summary>
    public Spread ToSpread() => Spread.Of(Low, Typical, High);

    internal Refusal? Fault(string field, double lowest, double highest) =>
        !(Low <= Typical && Typical <= High)
            ? Refusal.Of(field, "sites.range_order", Low, Typical, High)
            : Check.Between(Low, field, lowest, highest)
                ?? Check.Between(High, field, lowest, highest);
}
