using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heapwright.App.Sites;

namespace Heapwright.Web.Showing;

/// <summary>Reads answers of the contract for showing: what is absent is null, never an error.</summary>
public static class JsonView
{
    /// <summary>A number.</summary>
    /// <param name="json">An object.</param>
    /// <param name="field">Its field.</param>
    public static double? Number(this JsonNode? json, string field) =>
        Number((json as JsonObject)?[field]);

    /// <summary>A text; empty where it is absent.</summary>
    /// <param name="json">An object.</param>
    /// <param name="field">Its field.</param>
    public static string Text(this JsonNode? json, string field) =>
        (json as JsonObject)?[field] is JsonValue value && value.TryGetValue<string>(out var text)
            ? text
            : "";

    /// <summary>Whether a field is true.</summary>
    /// <param name="json">An object.</param>
    /// <param name="field">Its field.</param>
    public static bool IsTrue(this JsonNode? json, string field) =>
        (json as JsonObject)?[field] is JsonValue value
        && value.TryGetValue<bool>(out var yes)
        && yes;

    /// <summary>The objects of a list.</summary>
    /// <param name="json">An object.</param>
    /// <param name="field">Its field.</param>
    public static IEnumerable<JsonObject> Objects(this JsonNode? json, string field) =>
        ((json as JsonObject)?[field] as JsonArray)?.OfType<JsonObject>() ?? [];

    /// <summary>The texts of a list, or the one text.</summary>
    /// <param name="json">An object.</param>
    /// <param name="field">Its field.</param>
    public static IReadOnlyList<string> Texts(this JsonNode? json, string field) =>
        (json as JsonObject)?[field] switch
        {
            JsonArray list =>
            [
                .. list.OfType<JsonValue>()
                    .Select(v => v.TryGetValue<string>(out var text) ? text : "")
                    .Where(t => t.Length > 0),
            ],
            JsonValue value when value.TryGetValue<string>(out var text) && text.Length > 0 =>
            [
                text,
            ],
            _ => [],
        };

    /// <summary>A value known by three percentiles, or exactly.</summary>
    /// <param name="json">An object.</param>
    /// <param name="field">Its field.</param>
    public static ValueRange? Range(this JsonNode? json, string field) =>
        (json as JsonObject)?[field] switch
        {
            JsonObject range
                when range.Number("low") is { } low
                    && range.Number("typical") is { } typical
                    && range.Number("high") is { } high => new ValueRange(low, typical, high),
            { } value when Number(value) is { } exact => new ValueRange(exact, exact, exact),
            _ => null,
        };

    // An answer made here holds whole numbers as such; one read back holds them as JSON.
    private static double? Number(JsonNode? node) =>
        node is JsonValue value && value.GetValueKind() == JsonValueKind.Number
            ? value.TryGetValue<double>(out var number)
                ? number
                : value.TryGetValue<int>(out var whole)
                    ? whole
                    : double.Parse(value.ToJsonString(), CultureInfo.InvariantCulture)
            : null;
}
