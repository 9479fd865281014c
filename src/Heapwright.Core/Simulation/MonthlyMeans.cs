using System.Collections.Immutable;

namespace Heapwright.Core.Simulation;

/// <summary>
/// A quantity through the year from its twelve monthly means: a curve whose mean over each month is the mean that was
/// given.
/// </summary>
/// <remarks>
/// In month k, with s from 0 at its start to 1 at its end, the curve is e_k (1 − s) + e_{k+1} s + 6 (m_k − (e_k + e_{k+1})/2)
/// s (1 − s), whose mean is m_k whatever the values e at the edges. Those follow from equal slopes on both sides of every
/// edge, e_{k−1} + 4 e_k + e_{k+1} = 3 (m_{k−1} + m_k), round the year. Since s counts in months and not in days, the means
/// hold in leap years as in others; the slope in days changes at an edge only as the lengths of the two months do.
/// </remarks>
public sealed class MonthlyMeans
{
    /// <summary>The number of months.</summary>
    public const int Months = 12;

    private readonly ImmutableArray<double> means;
    private readonly double[] edges = new double[Months];

    /// <summary>The curve of twelve means.</summary>
    /// <param name="means">Shape [12], January first; any unit, finite.</param>
    public MonthlyMeans(ImmutableArray<double> means)
    {
        if (means.Length != Months || means.Any(m => !double.IsFinite(m)))
        {
            throw new ArgumentException("twelve finite means are needed", nameof(means));
        }

        this.means = means;

        // The inverse of the circulant matrix of 1, 4, 1: (r^j + r^(12−j)) / (2 √3 (1 − r^12)), r = √3 − 2.
        var r = Math.Sqrt(3) - 2;
        var scale = 2 * Math.Sqrt(3) * (1 - Math.Pow(r, Months));
        for (var k = 0; k < Months; k++)
        {
            for (var j = 0; j < Months; j++)
            {
                var weight = (Math.Pow(r, j) + Math.Pow(r, Months - j)) / scale;
                var from = (k + j) % Months;
                edges[k] += weight * 3 * (means[from] + means[(from + Months - 1) % Months]);
            }
        }
    }

    /// <summary>The value at a time of year.</summary>
    /// <param name="month">The month, 1 to 12.</param>
    /// <param name="share">How much of it is over, 0 to 1.</param>
    /// <returns>In the unit of the means.</returns>
    public double At(int month, double share)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(month, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(month, Months);
        if (share is not (>= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "0 to 1 is allowed");
        }

        var (before, after) = (edges[month - 1], edges[month % Months]);
        var bend = 6 * (means[month - 1] - ((before + after) / 2));
        return (before * (1 - share)) + (after * share) + (bend * share * (1 - share));
    }
}
