using System.Globalization;
using UnitsNet;

namespace Heapwright.Core.Materials.Measurements;

/// <summary>A bucket of known volume weighed empty and full.</summary>
/// <remarks>
/// The loose density is net mass over volume over a factor for how far the filling packs it. The published fills give
/// different densities for the same material, but no source prints by how much: factors and errors are our estimates.
/// </remarks>
public sealed record BucketWeighing : IMeasurement
{
    // How far two fillings of the same bucket by the same person differ.
    private const double FillError = 0.08;

    // A bathroom or luggage scale, on the difference of two weighings.
    private const double ScaleErrorKg = 0.1;

    // Coarse pieces leave gaps at the wall: in a bucket of 10 l they add this error, less in a larger one.
    private const double WallError = 0.12;

    private BucketWeighing(Volume volume, Mass empty, Mass full, FillingMethod filling, int buckets)
    {
        Volume = volume;
        Empty = empty;
        Full = full;
        Filling = filling;
        Buckets = buckets;
    }

    /// <summary>What the bucket holds to the line it was filled to.</summary>
    public Volume Volume { get; }

    /// <summary>The empty bucket.</summary>
    public Mass Empty { get; }

    /// <summary>The full bucket; the mean where several were weighed.</summary>
    public Mass Full { get; }

    /// <summary>How it was filled.</summary>
    public FillingMethod Filling { get; }

    /// <summary>How many buckets of the same stuff were weighed.</summary>
    public int Buckets { get; }

    /// <summary>Net mass over volume, as filled.</summary>
    /// <remarks>
    /// Source: Zabaleta, after Cooperband 2002 (printed): 20 l, 1 kg empty, 10 kg full give 0.45 kg/l.
    /// </remarks>
    public Density AsFilled =>
        Density.FromKilogramsPerCubicMeter((Full - Empty).Kilograms / Volume.CubicMeters);

    /// <summary>A weighing.</summary>
    /// <param name="volume">What the bucket holds, 1 to 1500 l.</param>
    /// <param name="empty">The empty bucket, 0 kg or more; 0 on a scale set to zero with it.</param>
    /// <param name="full">The full bucket, more than the empty one.</param>
    /// <param name="filling">How it was filled.</param>
    /// <param name="buckets">How many buckets were weighed, 1 to 100; <paramref name="full"/> is then their mean.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the density is that of no material.</exception>
    public static BucketWeighing Of(
        Volume volume,
        Mass empty,
        Mass full,
        FillingMethod filling,
        int buckets = 1
    )
    {
        if (!(volume.Liters is >= 1 and <= 1500))
        {
            throw Wrong(nameof(volume), volume.Liters, "a bucket of 1 to 1500 l is needed");
        }

        if (!(empty.Kilograms is >= 0 and <= 1000))
        {
            throw Wrong(
                nameof(empty),
                empty.Kilograms,
                "0 to 1000 kg is allowed for the empty bucket"
            );
        }

        if (!(full.Kilograms > empty.Kilograms) || !double.IsFinite(full.Kilograms))
        {
            throw Wrong(
                nameof(full),
                full.Kilograms,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the full bucket must weigh more than the empty one, {empty.Kilograms} kg"
                )
            );
        }

        if (!Enum.IsDefined(filling))
        {
            throw Wrong(
                nameof(filling),
                (int)filling,
                "loose, three taps, dropped, or dropped and refilled is allowed"
            );
        }

        if (buckets is < 1 or > 100)
        {
            throw Wrong(nameof(buckets), buckets, "1 to 100 buckets are allowed");
        }

        var weighing = new BucketWeighing(volume, empty, full, filling, buckets);
        if (!(weighing.AsFilled.KilogramsPerCubicMeter is >= 5 and <= 3000))
        {
            throw Wrong(
                nameof(full),
                weighing.AsFilled.KilogramsPerCubicMeter,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{weighing.AsFilled.KilogramsPerCubicMeter:0} kg/m³ comes out; 5 to 3000 is possible: check the volume and both weights"
                )
            );
        }

        return weighing;
    }

    /// <inheritdoc/>
    public Likelihood On(Material material)
    {
        ArgumentNullException.ThrowIfNull(material);
        var (packing, packingError) = Packing(Filling);
        var loose = AsFilled.KilogramsPerCubicMeter / packing;
        var coarse = string.Equals(material.Particle, "coarse", StringComparison.Ordinal);
        var wall = coarse ? WallError * Math.Sqrt(10 / Volume.Liters) : 0;
        var scale = ScaleErrorKg / (Full - Empty).Kilograms;
        var error = Math.Sqrt(
            (packingError * packingError)
                + (((FillError * FillError) + (wall * wall) + (scale * scale)) / Buckets)
        );
        return new Likelihood(
            MaterialProperty.BulkDensity,
            density => -0.5 * Square(Math.Log(density / loose) / error),
            loose,
            loose * error
        );
    }

    // How much denser than loose the filling packs it, and how unsure that factor is (relative).
    private static (double Factor, double Error) Packing(FillingMethod filling) =>
        filling switch
        {
            FillingMethod.ThreeTaps => (1.12, 0.07),
            FillingMethod.Dropped => (1.22, 0.10),
            FillingMethod.DroppedAndRefilled => (1.30, 0.12),
            _ => (1.0, 0.03),
        };

    private static double Square(double x) => x * x;

    private static ArgumentOutOfRangeException Wrong(string name, object value, string allowed) =>
        new(name, value, allowed);
}
