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
        // Plain lists: what is grouped by a query is compiled anew at every start of the program.
        var codes = new List<string>();
        var names = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var material in materials.OfType<Material>().DistinctBy(m => m.Id))
        {
            foreach (var code in material.Cautions)
            {
                Add(code, material.Name);
            }
        }

        foreach (var code in also)
        {
            Add(code, null);
        }

        var cautions = new JsonArray();
        foreach (var code in codes)
        {
            if (Words.TryOf($"cautions.{code}.text") is not { } text)
            {
                continue;
            }

            cautions.Add(
                (JsonNode)
                    new JsonObject
                    {
                        ["id"] = code,
                        ["text"] = text,
                        ["why"] = Words.TryOf($"cautions.{code}.why") ?? "",
                        ["materials"] = Json.Of(names[code]),
                    }
            );
        }

        return cautions;

        void Add(string code, string? name)
        {
            if (!names.TryGetValue(code, out var all))
            {
                names[code] = all = [];
                codes.Add(code);
            }

            if (name is not null)
            {
                all.Add(name);
            }
        }
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
