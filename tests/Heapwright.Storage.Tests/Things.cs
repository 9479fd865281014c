using System.Collections.Immutable;
using System.Text.Json;
using Heapwright.App.Sites;
using NodaTime;

namespace Heapwright.Storage.Tests;

/// <summary>One of every kind of thing, with every field filled.</summary>
internal static class Things
{
    public static Guid Id(int number) => new($"00000000-0000-4000-8000-{number:000000000000}");

    public static Site Site { get; } =
        new()
        {
            Id = App.Sites.Site.OnlyId,
            Name = "Top plot",
            Zone = "Europe/London",
            Units = new DisplayUnits("f", "gal_uk", "lb", "ft"),
            Air = new MonthlyAir
            {
                MeansC = [4, 4.5, 6.5, 9, 12, 15, 17, 17, 14.5, 11, 7, 4.5],
                SwingK = 4,
            },
        };

    public static StockEntry Grass { get; } =
        new()
        {
            Id = Id(1),
            Material = "grass_clippings_fresh",
            Name = "Lawn mowings",
            Amount = 3,
            Unit = "wheelbarrow",
            Since = new LocalDate(2026, 5, 31),
            Note = "no weedkiller",
            Giver = "Next door",
        };

    public static KeptHeap Heap { get; } =
        new()
        {
            Id = Id(8),
            Name = "June heap",
            BayId = Id(3),
            SheetId = Id(7),
            BuiltAt = Instant.FromUtc(2026, 5, 25, 15, 0),
            Zone = "Europe/London",
            Aim = "least_work",
            Question = Json(
                """{"bin":{"shape":"box","length_m":1.2,"width_m":1.1,"height_m":1},"ingredients":[{"material":"grass_clippings_fresh","amount":{"value":3,"unit":"wheelbarrow"}},{"material":"leaves_mixed_dry","amount":{"value":6,"unit":"wheelbarrow"}}],"water_l":20}"""
            ),
        };

    public static ImmutableArray<Item> All { get; } =
    [
        Site,
        new OwnContainer
        {
            Id = Id(2),
            Name = "black tub",
            HoldsL = 42.5,
            IsHeaped = true,
        },
        new Bay
        {
            Id = Id(3),
            Name = "Left bay",
            Shape = "box",
            LengthM = 1.2,
            WidthM = 1.1,
            HeightM = 1,
        },
        new OwnMaterial
        {
            Id = Id(4),
            Name = "Pond weed",
            CountsAs = "green",
            Freshness = "fresh",
            Kind = "leafy",
            Properties = ImmutableSortedDictionary<string, ValueRange>.Empty.Add(
                "moisture_pct_wb",
                new ValueRange(80, 88, 93)
            ),
            Note = "drained",
        },
        new Measurement
        {
            Id = Id(5),
            Material = "grass_clippings_fresh",
            Measure = "bucket_weight",
            At = Instant.FromUtc(2026, 5, 31, 9, 30),
            Values = Json("""{"full_kg":4.1,"empty_kg":0.6}"""),
        },
        Grass,
        new SavedRecipe
        {
            Id = Id(6),
            Name = "June heap",
            MadeAt = Instant.FromUtc(2026, 6, 1, 8, 0),
            Question = Json("""{"have":[]}"""),
            Answer = Json("""{"status":"ok"}"""),
        },
        new SavedSheet
        {
            Id = Id(7),
            Name = "June heap",
            BayId = Id(3),
            RecipeId = Id(6),
            MadeAt = Instant.FromUtc(2026, 6, 1, 8, 1),
            Question = Json("""{"bin":{}}"""),
            Answer = Json("""{"layers":[]}"""),
            Ticked = [1, 2],
        },
        Heap,
        new KeptLesson
        {
            Id = Id(9),
            HeapId = Id(8),
            Name = "June heap",
            BayId = Id(3),
            Bin = Json("""{"shape":"box","length_m":1.2,"width_m":1.1,"height_m":1}"""),
            MadeAt = Instant.FromUtc(2026, 6, 20, 8, 0),
            Readings = 14,
            IsUsed = false,
            Parameters = ImmutableSortedDictionary<string, LessonScore>.Empty.Add(
                "fast_rate",
                new LessonScore(0.8, 0.6)
            ),
        },
    ];

    private static JsonElement Json(string text)
    {
        using var document = JsonDocument.Parse(text);
        return document.RootElement.Clone();
    }
}
