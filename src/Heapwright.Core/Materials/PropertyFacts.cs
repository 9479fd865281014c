using System.Globalization;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Materials;

/// <summary>What every property has: its name in files and answers, its scale and the range that makes sense.</summary>
public static class PropertyFacts
{
    private static readonly (
        string Field,
        SpreadScale Scale,
        double Lowest,
        double Highest
    )[] Facts =
    [
        ("nitrogen_pct_db", SpreadScale.Positive, 0, 50),
        ("carbon_pct_db", SpreadScale.Positive, 0, 100),
        ("moisture_pct_wb", SpreadScale.Percent, 0, 99.5),
        ("bulk_density_kg_m3", SpreadScale.Positive, 1, 3000),
        ("ash_pct_db", SpreadScale.Percent, 0, 100),
        ("lignin_pct_db", SpreadScale.Percent, 0, 100),
        ("phosphorus_pct_db", SpreadScale.Positive, 0, 30),
        ("potassium_pct_db", SpreadScale.Positive, 0, 60),
        ("fast_pct_db", SpreadScale.Percent, 0, 100),
        ("stiff_share_pct", SpreadScale.Percent, 0, 100),
        ("unsupported_volume_pct", SpreadScale.Percent, 5, 100),
    ];

    /// <summary>
    /// The highest carbon content that plant or animal matter can hold, % of dry mass; a carbon content derived from
    /// nitrogen and a ratio above it shows that one of the two is wrong.
    /// </summary>
    /// <remarks>Source: pure volatile solids hold 45 to 60 % carbon (Richard, Cornell, printed).</remarks>
    public const double HighestCarbon = 60;

    /// <summary>The number of properties.</summary>
    public static int Count => Facts.Length;

    /// <summary>All properties, in order.</summary>
    public static IReadOnlyList<MaterialProperty> All { get; } = Enum.GetValues<MaterialProperty>();

    /// <summary>The name of the property in files and answers; it carries the unit.</summary>
    /// <param name="property">The property.</param>
    public static string FieldName(MaterialProperty property) => Facts[(int)property].Field;

    /// <summary>The scale on which the property varies.</summary>
    /// <param name="property">The property.</param>
    public static SpreadScale Scale(MaterialProperty property) => Facts[(int)property].Scale;

    /// <summary>The range allowed for the property, in its unit.</summary>
    /// <param name="property">The property.</param>
    public static (double Lowest, double Highest) Allowed(MaterialProperty property) =>
        (Facts[(int)property].Lowest, Facts[(int)property].Highest);

    /// <summary>The property with this field name, or null.</summary>
    /// <param name="field">A name such as <c>nitrogen_pct_db</c>.</param>
    public static MaterialProperty? FromFieldName(string field)
    {
        for (var i = 0; i < Facts.Length; i++)
        {
            if (string.Equals(Facts[i].Field, field, StringComparison.Ordinal))
            {
                return (MaterialProperty)i;
            }
        }

        return null;
    }

    internal static void Check(MaterialProperty property, Spread value)
    {
        var (lowest, highest) = Allowed(property);
        if (value.Low < lowest || value.High > highest)
        {
            throw new ArgumentOutOfRangeException(
                nameof(value),
                value.Low < lowest ? value.Low : value.High,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{FieldName(property)}: {lowest} to {highest} is allowed"
                )
            );
        }
    }
}
