using System.Text.Json.Nodes;
using Heapwright.App.Texts;
using Heapwright.Core.Materials;

namespace Heapwright.App.Contract;

/// <summary>A material as it stands in an answer.</summary>
public static class MaterialParts
{
    /// <summary>The material with all its values, how to prepare it, its cautions and the source of every value.</summary>
    /// <param name="material">The material.</param>
    public static JsonObject Of(Material material)
    {
        ArgumentNullException.ThrowIfNull(material);
        var answer = new JsonObject
        {
            ["id"] = material.Id,
            ["name"] = material.Name,
            ["also_called"] = Json.Of(material.AlsoCalled),
            ["group"] = material.Group,
            ["family"] = material.Family,
            ["kind"] = material.Kind,
            ["state"] = material.State,
            ["freshness"] = material.Freshness,
            ["particle"] = material.Particle,
            ["counts_as"] = material.CountsAs,
        };
        AddValues(answer, material.Properties);
        answer["spoils_in_days"] = material.SpoilsInDays;
        answer["prepare"] = string.Join(
            ' ',
            material.Prepare.Select(code => Words.Of("prepare." + code))
        );
        answer["ask_giver"] = Json.Of(
            material.AskGiver.Select(code => Words.Of("askGiver." + code))
        );
        answer["advice"] = material.Advice;
        answer["note"] = material.Note;
        answer["cautions"] = MaterialCautions.Of([material]);
        answer["sources"] = new JsonArray([.. material.Sources.Select(Source)]);
        return answer;
    }

    private static void AddValues(JsonObject answer, MaterialProperties properties)
    {
        foreach (var property in PropertyFacts.All)
        {
            // The fast share is given with the other shares, limited to what the ash leaves.
            if (property != MaterialProperty.Fast)
            {
                answer[PropertyFacts.FieldName(property)] = Json.Of(properties[property]);
            }

            if (property == MaterialProperty.Carbon)
            {
                answer["carbon_nitrogen_ratio"] = Json.Of(properties.CarbonNitrogenRatio());
            }
        }

        var shares = PoolShares.Of(properties);
        answer["fast_pct_db"] = Json.Of(shares?.Fast ?? properties[MaterialProperty.Fast]);
        answer["slow_pct_db"] = Json.Of(shares?.Slow);
        answer["lignin_rich_pct_db"] = Json.Of(shares?.LigninRich);
    }

    private static JsonNode Source(PropertySource source)
    {
        var answer = new JsonObject
        {
            ["field"] = source.Field,
            ["source"] = source.Source,
            ["kind"] = EvidenceKinds.Word(source.Kind),
        };
        if (source.Note.Length > 0)
        {
            answer["note"] = source.Note;
        }

        return answer;
    }
}
