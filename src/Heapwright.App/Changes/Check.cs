using System.Text.Json;

namespace Heapwright.App.Changes;

/// <summary>The checks that fields of kept things share.</summary>
internal static class Check
{
    public static IEnumerable<Refusal> Words(string? text, string field, int fewest, int most)
    {
        var length = text?.Trim().Length ?? 0;
        if (length < fewest)
        {
            yield return Refusal.Of(field, "sites.text_missing");
        }
        else if (length > most)
        {
            yield return Refusal.Of(field, "sites.text_long", length, most);
        }
        else if (text!.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t')))
        {
            yield return Refusal.Of(field, "sites.text_control");
        }
    }

    public static Refusal? Between(double value, string field, double lowest, double highest) =>
        value >= lowest && value <= highest
            ? null
            : Refusal.Of(field, "sites.number_range", value, lowest, highest);

    public static Refusal? Choice(string value, string field, IReadOnlyList<string> allowed) =>
        allowed.Contains(value, StringComparer.Ordinal)
            ? null
            : Refusal.Of(field, "sites.choice", value, string.Join(", ", allowed));

    public static IEnumerable<Refusal> Object(JsonElement json, string field)
    {
        if (json.ValueKind != JsonValueKind.Object)
        {
            yield return Refusal.Of(field, "sites.object_needed");
        }
    }
}
