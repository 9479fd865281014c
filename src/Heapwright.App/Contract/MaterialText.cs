using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Texts;
using Heapwright.Core.Quantities;

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
    /// <param name="measures">The measures of the text; metric if null.</param>
    public static Answer Of(JsonObject json, Measures? measures = null)
    {
        ArgumentNullException.ThrowIfNull(json);
        return new Answer(
            json,
            Yes: true,
            json["materials"] is JsonArray all ? Lines(all) : One(json, measures ?? Measures.Metric)
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

    private static string One(JsonObject material, Measures measures)
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

            var known = Value(range, field, measures);
            var from = string.Join(
                ", ",
                sources[field].Select(s => Word(s, "source") + ", " + Word(s, "kind"))
            );
            text.AppendLine(
                string.Create(
                        CultureInfo.InvariantCulture,
                        $"  {Words.Of("materials.value_" + code, null, measures.DensityUnit), -42} {Figures.One(known.Typical), 6}  ({Figures.One(known.Low)}–{Figures.One(known.High)})  {from}"
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

    private static Spread Value(JsonObject range, string field, Measures measures)
    {
        var value = Spread.Of(
            range["low"]!.GetValue<double>(),
            range["typical"]!.GetValue<double>(),
            range["high"]!.GetValue<double>()
        );
        return field == "bulk_density_kg_m3" ? measures.InDensity(value) : value;
    }

    private static string Word(JsonObject from, string field) =>
        from[field]?.GetValue<string>() ?? "";

    private static double Typical(JsonObject material, string field) =>
        material[field]?["typical"]?.GetValue<double>() ?? double.NaN;
}
