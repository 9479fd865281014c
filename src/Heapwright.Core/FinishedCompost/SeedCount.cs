using System.Globalization;

namespace Heapwright.Core.FinishedCompost;

/// <summary>What came of the seeds of one dish or pot.</summary>
public sealed record SeedCount
{
    /// <summary>Seeds counted.</summary>
    /// <param name="sown">How many were sown, above 0.</param>
    /// <param name="germinated">How many came up, 0 to <paramref name="sown"/>.</param>
    /// <param name="rootMillimetres">The mean length of their roots, mm; null where it was not measured.</param>
    /// <exception cref="ArgumentOutOfRangeException">More came up than were sown, or a number is below its range.</exception>
    public SeedCount(double sown, double germinated, double? rootMillimetres)
    {
        if (!(sown > 0) || !(germinated >= 0) || germinated > sown || rootMillimetres < 0)
        {
            throw new ArgumentOutOfRangeException(
                nameof(germinated),
                germinated,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"0 ≤ germinated ≤ sown ({sown}), sown above 0 and a length of 0 or more are needed"
                )
            );
        }

        (Sown, Germinated, RootMillimetres) = (sown, germinated, rootMillimetres);
    }

    /// <summary>How many were sown.</summary>
    public double Sown { get; }

    /// <summary>How many came up.</summary>
    public double Germinated { get; }

    /// <summary>The mean length of their roots, mm.</summary>
    public double? RootMillimetres { get; }

    /// <summary>% of those sown.</summary>
    public double Percent => 100 * Germinated / Sown;
}
