using System.Text.Json.Nodes;
using Heapwright.App.Sites;

namespace Heapwright.Web.Showing;

/// <summary>One of the things a heap needs, against its aim, as a gauge shows it.</summary>
/// <param name="Quantity">Which, by its field.</param>
/// <param name="Value">What it is.</param>
/// <param name="Low">The lower end of the aim; null for none.</param>
/// <param name="High">The upper end of the aim; null for none.</param>
/// <param name="Status">good, low, high or uncertain.</param>
/// <param name="Chance">The chance of lying within, 0 to 1.</param>
/// <param name="Why">What it means for the heap.</param>
/// <param name="Source">Where the aim comes from.</param>
public sealed record GaugeView(
    string Quantity,
    ValueRange Value,
    double? Low,
    double? High,
    string Status,
    double Chance,
    string Why,
    string Source
)
{
    private static readonly Dictionary<string, (double From, double To)> Scales = new(
        StringComparer.Ordinal
    )
    {
        ["carbon_nitrogen_ratio"] = (5, 80),
        ["available_carbon_nitrogen_ratio"] = (3, 48),
        ["moisture_pct_wb"] = (20, 90),
        ["free_air_space_pct"] = (0, 90),
        ["free_air_space_settled_pct"] = (0, 90),
        ["stiff_share_pct"] = (0, 80),
        ["bulk_density_kg_m3"] = (50, 1000),
    };

    /// <summary>Where the scale begins.</summary>
    public double From => Scales.GetValueOrDefault(Quantity, (0, 100)).Item1;

    /// <summary>Where the scale ends.</summary>
    public double To => Scales.GetValueOrDefault(Quantity, (0, 100)).Item2;

    /// <summary>Whether the scale is logarithmic, as for ratios.</summary>
    public bool IsRatio => Quantity.EndsWith("ratio", StringComparison.Ordinal);

    /// <summary>The place of a value on the scale, 0 to 1; at an end where it lies beyond.</summary>
    /// <param name="value">The value.</param>
    public double Place(double value)
    {
        var held = Math.Clamp(value, From, To);
        return IsRatio ? Math.Log(held / From) / Math.Log(To / From) : (held - From) / (To - From);
    }

    /// <summary>The gauges of an answer to <c>mix</c>, in its order.</summary>
    /// <param name="mixture">The answer, or a mixture within an answer.</param>
    public static IReadOnlyList<GaugeView> Of(JsonNode? mixture) =>
        [
            .. mixture
                .Objects("verdicts")
                .Where(v => v.Range("value") is not null)
                .Select(v => new GaugeView(
                    v.Text("quantity"),
                    v.Range("value")!,
                    v.Number("low"),
                    v.Number("high"),
                    v.Text("status"),
                    v.Number("chance_good") ?? 0,
                    v.Text("why"),
                    v.Text("source")
                )),
        ];
}
