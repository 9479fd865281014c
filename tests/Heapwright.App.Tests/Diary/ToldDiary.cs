using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using NodaTime;

namespace Heapwright.App.Tests.Diary;

/// <summary>A heap of a cubic metre and its diary, told in entries as they are sent, each with its <c>day</c>.</summary>
internal static class ToldDiary
{
    private static readonly Guid HeapId = new("00000000-0000-4000-8000-000000000009");
    public static Instant Built { get; } = Instant.FromUtc(2026, 3, 1, 12, 0);

    public static KeptHeap Heap { get; } =
        new()
        {
            Id = HeapId,
            Name = "Left bay",
            BuiltAt = Built,
            Zone = "Etc/UTC",
            Question = StartHeap.ToElement(
                JsonNode.Parse(
                    """
                    {"bin":{"shape":"box","length_m":1,"width_m":1,"height_m":1},
                     "ingredients":[{"material":"grass_clippings_fresh","amount":{"value":400,"unit":"l"}},
                                    {"material":"wheat_straw","amount":{"value":600,"unit":"l"}}]}
                    """
                )!
            ),
        };

    public static HeapRecord Record(params string[] entries) =>
        new(
            Heap,
            [
                .. entries
                    .Select(e => JsonNode.Parse(e))
                    .OrderBy(e => e!["day"]!.GetValue<double>())
                    .Select(e =>
                    {
                        var json = e!.AsObject();
                        var day = json["day"]!.GetValue<double>();
                        json.Remove("day");
                        return new JudgedEntry(Sent(json.ToJsonString(), day), null);
                    }),
            ]
        );

    public static DiaryEntry Sent(string entry, double day)
    {
        var json = JsonNode.Parse(entry)!.AsObject();
        var at = (Built + Duration.FromDays(day)).ToDateTimeOffset();
        json["id"] = Guid.CreateVersion7().ToString();
        json["at"] = EntryJson.Time(at);
        return EntryReader.Sent(
            Input.Read(Encoding.UTF8.GetBytes(json.ToJsonString()), "entry"),
            new Arrival(HeapId, EntryWay.Http, at, "Etc/UTC")
        );
    }
}
