using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Library;
using Heapwright.Core.Readings;
using NodaTime;
using NodaTime.Text;

namespace Heapwright.App.Sites;

/// <summary>
/// The heaps of the sample garden with their build sheets and diaries: one carried from the stock to the beds, and one in
/// its second week. Invented, as every row of data/sample/sample-diary.csv says.
/// </summary>
internal static class SampleHeaps
{
    private const string Diary = "sample-diary.csv";

    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    private static readonly Plan Summer = new(
        "summer",
        "heap_summer",
        135,
        25,
        [
            new("horse_manure_straw", "manure", 4, "wheelbarrow", 4, FromStables: true),
            new("grass_clippings_fresh", "grass", 3, "wheelbarrow", 0),
            new("leaves_mixed_dry", "leaves", 6, "wheelbarrow", 60),
            new("wood_chips_coarse", "chips", 4, "wheelbarrow", 30),
            new("kitchen_scraps", "scraps", 4, "bucket", 2),
        ]
    );

    private static readonly Plan Now = new(
        "now",
        "heap_now",
        8,
        30,
        [
            new("grass_clippings_fresh", "grass", 3, "wheelbarrow", 0),
            new("horse_manure_straw", "manure", 3, "wheelbarrow", 4, FromStables: true),
            new("leaves_mixed_dry", "leaves", 6, "wheelbarrow", 60),
            new("wood_chips_coarse", "chips", 4, "wheelbarrow", 30),
            new("kitchen_scraps", "scraps", 3, "bucket", 2),
        ]
    );

    /// <summary>The sheets and heaps, each heap after its sheet.</summary>
    /// <param name="contents">The containers of the garden.</param>
    /// <param name="summerBay">The bay of the heap that is done.</param>
    /// <param name="nowBay">The bay of the other.</param>
    /// <param name="today">The day.</param>
    /// <param name="zone">The zone of the garden.</param>
    public static IEnumerable<Item> Things(
        SiteContents contents,
        Bay summerBay,
        Bay nowBay,
        LocalDate today,
        DateTimeZone zone
    )
    {
        foreach (var (plan, bay) in new[] { (Summer, summerBay), (Now, nowBay) })
        {
            var built = today
                .PlusDays(-plan.DaysAgo)
                .At(new LocalTime(12, 0))
                .InZoneLeniently(zone)
                .ToInstant();
            var sheet = Sheet(plan, contents, bay, built);
            yield return sheet;
            yield return StartHeap.FromSheet(sheet, bay, Guid.CreateVersion7(), built, zone.Id) with
            {
                IsSample = true,
            };
        }
    }

    /// <summary>The diary of a heap of the garden, without what its beginning adds.</summary>
    /// <param name="heap">The heap.</param>
    /// <param name="now">The present; what would come after it is left out.</param>
    public static ImmutableArray<DiaryEntry> EntriesOf(KeptHeap heap, DateTimeOffset now)
    {
        var plan = PlanOf(heap);
        var first = SiteDays.DayOf(heap.BuiltAt, heap.TimeZone());
        return
        [
            .. DataFiles
                .Csv(Diary)
                .Where(row => row["heap"] == plan.Key)
                .Select(row => Entry(row, heap, first, now))
                .Where(e => e.At <= now),
        ];
    }

    /// <summary>The stock as it was when a heap of the garden was built.</summary>
    /// <param name="heap">The heap.</param>
    public static ImmutableArray<StockEntry> LoadsOf(KeptHeap heap)
    {
        var plan = PlanOf(heap);
        var built = SiteDays.DayOf(heap.BuiltAt, heap.TimeZone());
        return
        [
            .. plan.Parts.Select(p => new StockEntry
            {
                Id = Guid.CreateVersion7(),
                Material = p.Material,
                Name = p.Name,
                Amount = p.Amount,
                Unit = p.Unit,
                Since = built.PlusDays(-p.DaysBefore),
                Giver = p.Giver,
            }),
        ];
    }

    private static Plan PlanOf(KeptHeap heap) =>
        new[] { Summer, Now }.Single(p => p.Name == heap.Name);

    private static SavedSheet Sheet(Plan plan, SiteContents contents, Bay bay, Instant built)
    {
        var ask = new SiteQuestions(contents);
        var question = new JsonObject
        {
            ["name"] = plan.Name,
            ["ingredients"] = new JsonArray([
                .. plan.Parts.Select(p =>
                    (JsonNode)ask.Ingredient(p.Material, p.Name, p.Amount, p.Unit)
                ),
            ]),
            ["water_l"] = plan.WaterLitres,
            ["containers"] = ask.Containers(),
            ["bin"] = SiteQuestions.Bin(bay),
        };
        var answer = BuildAnswers.Answer(Input.Of(question, plan.Name)).Json;
        return new SavedSheet
        {
            Id = Guid.CreateVersion7(),
            IsSample = true,
            Name = plan.Name,
            BayId = bay.Id,
            MadeAt = built - Duration.FromHours(18),
            Question = StartHeap.ToElement(question),
            Answer = StartHeap.ToElement(answer),
            Ticked = [.. Enumerable.Range(1, answer["layers"]!.AsArray().Count)],
        };
    }

    private static DiaryEntry Entry(CsvRow row, KeptHeap heap, LocalDate first, DateTimeOffset now)
    {
        var day = int.Parse(row["day"], NumberStyles.None, CultureInfo.InvariantCulture);
        var at = first
            .PlusDays(day)
            .At(Clock.Parse(row["clock"]).Value)
            .InZoneLeniently(heap.TimeZone())
            .ToDateTimeOffset();
        var said = Said(row);
        said["id"] = Guid.CreateVersion7().ToString();
        said["at"] = EntryJson.Time(at);
        return EntryReader.Sent(
            Input.Of(said, Diary),
            new Arrival(heap.Id, EntryWay.Page, now, heap.Zone)
        );
    }

    // A row as it would be sent.
    private static JsonObject Said(CsvRow row)
    {
        var (entry, place, value) = (row["entry"], row["where"], row.Number("value"));
        return entry switch
        {
            "temperature" => new JsonObject
            {
                ["temperature_c"] = value,
                ["spot"] = place,
                ["air_c"] = row.Number("air_c"),
            },
            "squeeze" => new JsonObject { ["squeeze"] = new JsonObject { [place] = row["words"] } },
            "smell" or "see" => new JsonObject { [entry] = Json.Of(row.List("words")) },
            "note" => new JsonObject { ["text"] = SampleGarden.Said(row["words"]) },
            "turn" => new JsonObject { ["do"] = entry, ["thoroughness"] = row["words"] },
            "water" => new JsonObject { ["do"] = entry, ["l"] = value },
            "cover" => new JsonObject { ["do"] = entry, ["kind"] = row["words"] },
            "close" => new JsonObject { ["do"] = entry },
            "spread" => new JsonObject
            {
                ["do"] = entry,
                ["bed"] = SampleGarden.Said(place),
                ["l"] = value,
            },
            "begin" => new JsonObject { ["do"] = "test", ["test"] = place },
            "test" => new JsonObject
            {
                ["do"] = entry,
                ["test"] = place,
                ["values"] = Values(row.List("words")),
            },
            _ => throw new FormatException($"{Diary}: \"{entry}\" is no entry"),
        };
    }

    private static JsonObject Values(ImmutableArray<string> pairs)
    {
        var json = new JsonObject();
        foreach (var pair in pairs)
        {
            var (name, value) = (pair.Split('=')[0], pair.Split('=')[1]);
            json[name] = double.Parse(value, NumberStyles.Float, CultureInfo.InvariantCulture);
        }

        return json;
    }

    private sealed record Part(
        string Material,
        string Called,
        double Amount,
        string Unit,
        int DaysBefore,
        bool FromStables = false
    )
    {
        public string Name => SampleGarden.Said(Called);

        public string Giver => FromStables ? SampleGarden.Said("stables") : "";
    }

    private sealed record Plan(
        string Key,
        string Called,
        int DaysAgo,
        double WaterLitres,
        ImmutableArray<Part> Parts
    )
    {
        public string Name => SampleGarden.Said(Called);
    }
}
