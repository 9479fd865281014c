using System.Text.Json.Nodes;
using Heapwright.App.Diary;

namespace Heapwright.App.Batches;

/// <summary>Compost of a batch that was used on a bed.</summary>
/// <param name="At">When.</param>
/// <param name="Bed">The bed.</param>
/// <param name="Litres">How much, litres.</param>
public sealed record BatchUse(DateTimeOffset At, string Bed, double Litres)
{
    /// <summary>It in JSON.</summary>
    internal JsonNode ToJson() =>
        new JsonObject
        {
            ["at"] = EntryJson.Time(At),
            ["bed"] = Bed,
            ["l"] = Litres,
        };
}
