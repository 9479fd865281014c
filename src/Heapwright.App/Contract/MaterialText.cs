using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Texts;

namespace Heapwright.App.Contract;

/// <summary>The answers of <c>materials</c> in words, from the same JSON.</summary>
public static class MaterialText
{
    private static readonly (string Field, string Code)[] Shown =
    [
        ("carbon_nitrogen_ratio", "carbon_nitrogen_ratio"),
        ("nitrogen_pct_db", "nitrogen"),
        ("carbon_pct_db", "carbon"),
        ("moisture_pct_wb", "moisture"),
        ("bulk_density_kg_m3", "bulk_density"),
        ("ash_pct_db", "ash"),
        ("lignin_pct_db", "lignin"),
        ("phosphorus_pct_db", "phosphorus"),
        ("potassium_pct_db", "potassium"),
        ("fast_pct_db", "fast"),
        ("slow_pct_db", "slow"),
        ("lignin_rich_pct_db", "lignin_rich"),
        ("stiff_share_pct", "stiff_share"),
        ("unsupported_volume_pct", "unsupported_volume"),
    ];

    /// <summary>An answer of several or of one material, with its text.</summary>
    /// <param name="json">The answer as JSON.</param>
    public static Answer Of(JsonObject json)
    {
        ArgumentNullException.ThrowIfNull(json);
        return new Answer(
            json,
            Yes: true,
            json["materials"] is JsonArray all ? Lines(all) : One(json)
        );
    }

    private static string Lines(JsonArray all)
    {
        var text = new StringBuilder();
        foreach (var material in all.OfType<JsonObject>())
        {
            text.AppendLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Word(material, "id"), -32} {Word(material, "counts_as"), -10} C:N {Figures.One(Typical(material, "carbon_nitrogen_ratio")), -6} {Word(material, "name")}"
                )
            );
        }

        return text.Length > 0 ? text.ToString() : Words.Of("materials.nothing_found") + "\n";
    }

    private static string One(JsonObject material)
    {
        var text = new StringBuilder();
        text.AppendLine(Word(material, "name"));
        if (material["also_called"] is JsonArray { Count: > 0 } names)
        {
            text.AppendLine(
                Words.Of(
                    "materials.also_called",
                    null,
                    string.Join(", ", names.Select(n => n!.GetValue<string>()))
                )
            );
        }

        text.AppendLine();
        var sources = (material["sources"] as JsonArray ?? [])
            .OfType<JsonObject>()
            .ToLookup(s => Word(s, "field"), StringComparer.Ordinal);
        foreach (var (field, code) in Shown)
        {
            if (material[field] is not JsonObject range)
            {
                continue;
            }

            var from = string.Join(
                ", ",
                sources[field].Select(s => Word(s, "source") + ", " + Word(s, "kind"))
            );
            text.AppendLine(
                string.Create(
                        CultureInfo.InvariantCulture,
                        $"  {Words.Of("materials.value_" + code), -42} {Figures.One(range["typical"]!.GetValue<double>()), 6}  ({Figures.One(range["low"]!.GetValue<double>())}–{Figures.One(range["high"]!.GetValue<double>())})  {from}"
                    )
                    .TrimEnd()
            );
        }

        text.AppendLine().AppendLine(Word(material, "prepare"));
        foreach (var caution in (material["cautions"] as JsonArray ?? []).OfType<JsonObject>())
        {
            text.AppendLine(
                Words.Of("materials.caution", null, Word(caution, "text"), Word(caution, "why"))
            );
        }

        foreach (var ask in material["ask_giver"] as JsonArray ?? [])
        {
            text.AppendLine(Words.Of("materials.ask", null, ask!.GetValue<string>()));
        }

        return text.ToString();
    }

    private static string Word(JsonObject from, string field) =>
        from[field]?.GetValue<string>() ?? "";

    private static double Typical(JsonObject material, string field) =>
        material[field]?["typical"]?.GetValue<double>() ?? double.NaN;
}
