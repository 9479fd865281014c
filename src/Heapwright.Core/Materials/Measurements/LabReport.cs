namespace Heapwright.Core.Materials.Measurements;

/// <summary>A value from a laboratory, with its error.</summary>
public sealed record LabReport : IMeasurement
{
    private LabReport(MaterialProperty property, double value, double standardDeviation)
    {
        Property = property;
        Value = value;
        StandardDeviation = standardDeviation;
    }

    /// <summary>The property reported.</summary>
    public MaterialProperty Property { get; }

    /// <summary>The value, in the unit of the property.</summary>
    public double Value { get; }

    /// <summary>How far it may be off for the whole load, in the same unit.</summary>
    public double StandardDeviation { get; }

    /// <summary>A reported value.</summary>
    /// <param name="property">The property.</param>
    /// <param name="value">The value, in the unit of the property and on its basis, within its allowed range.</param>
    /// <param name="standardDeviation">Its error, above 0; <see cref="UsualError"/> where the laboratory gives none.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value or the error is outside its range.</exception>
    public static LabReport Of(
        MaterialProperty property,
        double value,
        double? standardDeviation = null
    )
    {
        var (lowest, highest) = PropertyFacts.Allowed(property);
        if (!(value >= lowest && value <= highest))
        {
            throw new ArgumentOutOfRangeException(
                nameof(value),
                value,
                FormattableString.Invariant(
                    $"{PropertyFacts.FieldName(property)}: {lowest} to {highest} is allowed"
                )
            );
        }

        var error = standardDeviation ?? UsualError(property, value);
        if (!(error > 0) || !double.IsFinite(error))
        {
            throw new ArgumentOutOfRangeException(
                nameof(standardDeviation),
                error,
                "an error above 0 is needed"
            );
        }

        return new LabReport(property, value, error);
    }

    /// <summary>The error to assume where the laboratory states none: its own and that of one bagged sample.</summary>
    /// <param name="property">The property.</param>
    /// <param name="value">The value.</param>
    /// <remarks>An estimate.</remarks>
    public static double UsualError(MaterialProperty property, double value) =>
        property switch
        {
            MaterialProperty.Moisture => 2,
            MaterialProperty.Ash => Math.Max(1, 0.06 * value),
            MaterialProperty.Carbon => Math.Max(0.3, 0.04 * value),
            MaterialProperty.Nitrogen => Math.Max(0.03, 0.06 * value),
            _ => Math.Max(0.02, 0.1 * value),
        };

    /// <inheritdoc/>
    public Likelihood On(Material material) => Normal(Property, Value, StandardDeviation);

    /// <summary>A value with a normal error.</summary>
    internal static Likelihood Normal(MaterialProperty property, double value, double error) =>
        new(
            property,
            x =>
            {
                var z = (x - value) / error;
                return -0.5 * z * z;
            },
            value,
            error
        );
}
