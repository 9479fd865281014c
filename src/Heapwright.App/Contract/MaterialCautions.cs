using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Texts;
using Heapwright.Core.Materials;

namespace Heapwright.App.Contract;

/// <summary>The cautions that belong to the materials of an answer.</summary>
internal static class MaterialCautions
{
    /// <summary>Every caution once, with the materials it belongs to.</summary>
    /// <param name="materials">The materials; null entries (not of the library) are passed over.</param>
    /// <param name="also">Codes of further cautions, such as <c>legionella_dust</c>.</param>
    public static JsonArray Of(IEnumerable<Material?> materials, params ReadOnlySpan<string> also)
    {
        var found = new List<(string Code, string? Name)>();
        foreach (var material in materials.OfType<Material>().DistinctBy(m => m.Id))
        {
            found.AddRange(material.Cautions.Select(c => (c, (string?)material.Name)));
        }

        foreach (var code in also)
        {
            found.Add((code, null));
        }

        var cautions = new JsonArray();
        foreach (var group in found.GroupBy(f => f.Code, StringComparer.Ordinal))
        {
            if (Words.TryOf($"cautions.{group.Key}.text") is not { } text)
            {
                continue;
            }

            cautions.Add(
                (JsonNode)
                    new JsonObject
                    {
                        ["id"] = group.Key,
                        ["text"] = text,
                        ["why"] = Words.TryOf($"cautions.{group.Key}.why") ?? "",
                        ["materials"] = Json.Of(group.Select(g => g.Name).OfType<string>()),
                    }
            );
        }

        return cautions;
    }

    /// <summary>The cautions in words, at the end of an answer.</summary>
    /// <param name="text">The answer so far.</param>
    /// <param name="cautions">The cautions of the answer.</param>
    public static void Append(StringBuilder text, JsonArray cautions) =>
        Figures.AppendList(
            text,
            Words.Of("quantities.cautions"),
            [.. cautions.Select(c => c!["text"]!.GetValue<string>())]
        );
}
