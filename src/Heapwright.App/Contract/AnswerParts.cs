using System.Text.Json.Nodes;
using Heapwright.App.Texts;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>The pieces every answer in JSON is made of.</summary>
public static class AnswerParts
{
    /// <summary>The number of the form in which answers are written.</summary>
    public const int Schema = 1;

    /// <summary>A value as its three percentiles, not rounded; null where it is not known.</summary>
    /// <param name="value">The value.</param>
    public static JsonNode? Range(Spread? value) =>
        value is { } known
            ? new JsonObject
            {
                ["low"] = known.Low,
                ["typical"] = known.Typical,
                ["high"] = known.High,
            }
            : null;

    /// <summary>A list of texts.</summary>
    /// <param name="texts">The texts, in order.</param>
    public static JsonArray List(IEnumerable<string> texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        return [.. texts.Select(t => (JsonNode?)JsonValue.Create(t))];
    }

    /// <summary>A caution with its words.</summary>
    /// <param name="code">A code such as <c>raw_manure</c>.</param>
    public static JsonObject Caution(string code) =>
        new()
        {
            ["id"] = code,
            ["text"] = Words.Of($"cautions.{code}.text"),
            ["why"] = Words.Of($"cautions.{code}.why"),
        };

    /// <summary>Cautions with their words, each once, in the order given.</summary>
    /// <param name="codes">Codes such as <c>raw_manure</c>.</param>
    public static JsonArray Cautions(IEnumerable<string> codes)
    {
        ArgumentNullException.ThrowIfNull(codes);
        return [.. codes.Distinct(StringComparer.Ordinal).Select(c => (JsonNode?)Caution(c))];
    }
}
