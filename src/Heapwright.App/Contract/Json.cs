using System.Text.Json.Nodes;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>Puts values into JSON as the contract has them: unrounded, ranges as low, typical and high.</summary>
internal static class Json
{
    /// <summary>The schema number of every answer and file.</summary>
    public const int Schema = 1;

    public static JsonNode? Of(double value) =>
        double.IsFinite(value) ? JsonValue.Create(value) : null;

    public static JsonNode? Of(double? value) => value is { } v ? Of(v) : null;

    public static JsonObject Of(Spread value) =>
        new()
        {
            ["low"] = value.Low,
            ["typical"] = value.Typical,
            ["high"] = value.High,
        };

    public static JsonNode? Of(Spread? value) => value is { } v ? Of(v) : null;

    /// <summary>A plain number where it is exact, a range where it is not.</summary>
    public static JsonNode Plain(Spread value) =>
        value.IsExact ? JsonValue.Create(value.Typical) : Of(value);

    public static JsonArray Of(IEnumerable<string> texts) =>
        new([.. texts.Select(t => (JsonNode)JsonValue.Create(t))]);
}
