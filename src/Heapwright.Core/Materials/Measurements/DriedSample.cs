using System.Globalization;
using Heapwright.Core.Quantities;
using UnitsNet;

namespace Heapwright.Core.Materials.Measurements;

/// <summary>A sample weighed before and after drying.</summary>
/// <remarks>Errors are our estimates: 1 point of moisture for an oven, 2 for a microwave, and what one handful differs from the rest.</remarks>
public sealed record DriedSample : IMeasurement
{
    private const double OvenError = 1;
    private const double MicrowaveError = 2;

    // How far one handful differs from the load it was taken from, in points of moisture.
    private const double SamplingError = 1.5;

    // A kitchen scale reads to the gram.
    private const double ScaleErrorG = 0.5;

    private DriedSample(WetBasisMoisture moisture, Mass wet, DryingMethod method, int samples)
    {
        Moisture = moisture;
        Wet = wet;
        Method = method;
        Samples = samples;
    }

    /// <summary>The water as a share of the wet sample.</summary>
    public WetBasisMoisture Moisture { get; }

    /// <summary>The wet sample without its container.</summary>
    public Mass Wet { get; }

    /// <summary>How it was dried.</summary>
    public DryingMethod Method { get; }

    /// <summary>How many samples from different places were dried together or averaged.</summary>
    public int Samples { get; }

    /// <summary>A dried sample.</summary>
    /// <param name="container">The empty container; 0 on a scale set to zero with it.</param>
    /// <param name="wet">The container with the wet sample: at least 5 g of sample.</param>
    /// <param name="dry">The container with the dried sample: not less than the container, less than when wet.</param>
    /// <param name="method">How it was dried.</param>
    /// <param name="samples">How many samples from different places, 1 to 100.</param>
    /// <remarks>Source: Trautmann and Richard, Cornell Composting, "Moisture content" (printed).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A weight or the number of samples is outside its range.</exception>
    public static DriedSample Of(
        Mass container,
        Mass wet,
        Mass dry,
        DryingMethod method,
        int samples = 1
    )
    {
        if (!(container.Grams >= 0) || !double.IsFinite(container.Grams))
        {
            throw new ArgumentOutOfRangeException(
                nameof(container),
                container.Grams,
                "a container of 0 g or more is needed"
            );
        }

        var netWet = wet.Grams - container.Grams;
        var netDry = dry.Grams - container.Grams;
        if (!(netWet >= 5) || !double.IsFinite(netWet))
        {
            throw new ArgumentOutOfRangeException(
                nameof(wet),
                wet.Grams,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"g with the container of {container.Grams} g leaves {netWet} g; at least 5 g of sample are needed"
                )
            );
        }

        if (!(netDry >= 0) || netDry > netWet)
        {
            throw new ArgumentOutOfRangeException(
                nameof(dry),
                dry.Grams,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{container.Grams} to {wet.Grams} g with the container is possible after drying"
                )
            );
        }

        if (!Enum.IsDefined(method))
        {
            throw new ArgumentOutOfRangeException(
                nameof(method),
                (int)method,
                "oven or microwave is allowed"
            );
        }

        if (samples is < 1 or > 100)
        {
            throw new ArgumentOutOfRangeException(
                nameof(samples),
                samples,
                "1 to 100 samples are allowed"
            );
        }

        return new DriedSample(
            WetBasisMoisture.FromDrying(netWet, netDry),
            Mass.FromGrams(netWet),
            method,
            samples
        );
    }

    /// <inheritdoc/>
    public Likelihood On(Material material)
    {
        var drying = Method == DryingMethod.Oven ? OvenError : MicrowaveError;
        var weighing = 100 * ScaleErrorG / Wet.Grams;
        var error = Math.Sqrt(
            (drying * drying) + (weighing * weighing) + (SamplingError * SamplingError / Samples)
        );
        return LabReport.Normal(MaterialProperty.Moisture, Moisture.Percent, error);
    }
}
