using System.Text.Json.Nodes;

namespace Heapwright.Validation.Properties;

/// <summary>A question to <c>mix</c>, as data that can be scaled, shuffled and split.</summary>
internal sealed record Heap(IReadOnlyList<Stuff> Parts, double Water, int Seed)
{
    /// <summary>The figures of a mixture that are amounts: kg or litres.</summary>
    public static readonly string[] Amounts =
    [
        "wet_mass_kg",
        "dry_mass_kg",
        "water_kg",
        "carbon_kg",
        "nitrogen_kg",
        "phosphorus_kg",
        "potassium_kg",
        "volume_l",
        "filled_volume_l",
    ];

    /// <summary>The figures of a mixture that are ratios.</summary>
    public static readonly string[] Ratios =
    [
        "carbon_nitrogen_ratio",
        "available_carbon_nitrogen_ratio",
        "moisture_pct_wb",
        "bulk_density_kg_m3",
        "free_air_space_pct",
        "free_air_space_settled_pct",
        "stiff_share_pct",
    ];

    /// <summary>Filled volume over loose sum, where the question says it.</summary>
    public double? MixingFactor { get; init; }

    public string Json() =>
        $$"""
            {"ingredients":[{{string.Join(
                ',',
                Parts.Select(p => p.Json())
            )}}],"water_l":{{Known.Text(
                Water
            )}},"seed":{{Seed}}{{(MixingFactor is { } factor ? $",\"mixing_volume_factor\":{Known.Text(factor)}" : "")}},"containers":{"bucket":{"l":13},"barrow":{"l":{"low":60,"typical":90,"high":120} } } }
            """;

    public JsonObject Mixed() => Ask.Mix(Json()).Json;

    /// <summary>All figures and verdicts, so that two answers can be compared to the byte.</summary>
    public static string Figures(JsonObject answer) =>
        string.Join(
            '\n',
            Amounts
                .Concat(Ratios)
                .Append("verdicts")
                .Select(f => f + " " + answer[f]?.ToJsonString())
        );
}
