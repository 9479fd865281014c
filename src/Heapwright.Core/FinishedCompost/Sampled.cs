using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>A quantity at every point of the sample set, and where it is from.</summary>
/// <param name="Cases">Shape [point].</param>
/// <param name="From">Where it is from.</param>
public sealed record Sampled(IReadOnlyList<double> Cases, Origin From)
{
    /// <summary>Its percentiles.</summary>
    public Spread Value => Spread.OfSample([.. Cases]);

    /// <summary>Another quantity from this one.</summary>
    /// <param name="change">From one case.</param>
    public Sampled Map(Func<double, double> change) => new([.. Cases.Select(change)], From);

    /// <summary>Another quantity from this one and a second; it is from where this one is unless told.</summary>
    /// <param name="other">The second.</param>
    /// <param name="change">From one case of both.</param>
    /// <param name="from">Where it is from.</param>
    public Sampled With(Sampled other, Func<double, double, double> change, Origin? from = null)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new([.. Cases.Zip(other.Cases, change)], from ?? From);
    }
}
