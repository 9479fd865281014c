using System.Text.Json.Nodes;
using Heapwright.Core.Bins;
using Heapwright.Core.Heaps;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>
/// The question of <c>diagnose</c> as far as a heap and its diary answer it: size, age and materials as built, readings,
/// deeds, and the signs of the last days. What the diary does not tell is left out.
/// </summary>
public static class SignsQuestion
{
    /// <summary>Signs older than this say nothing of today.</summary>
    public const double DaysOfSigns = 4;

    private const double DaysOfAir = 3;
    private const double DaysOfRain = 4;
    private const double MuchRain = 10; // mm
    private const int MostReadings = 500;
    private const int MostDeeds = 100;

    /// <summary>What is known of a heap now.</summary>
    /// <param name="record">The heap with its diary.</param>
    /// <param name="now">The present.</param>
    public static JsonObject Of(HeapRecord record, Instant now)
    {
        ArgumentNullException.ThrowIfNull(record);
        var today = record.DayOf(now.ToDateTimeOffset());
        var told = ToldEntry.Of(record, today);
        var question = new JsonObject { ["heap"] = Built(record.Heap(), told, today) };
        Put(question, "weather", Weather(told, record, today));
        Put(question, "readings", Readings(told, record));
        Put(question, "signs", Signs(told, today));
        Put(question, "done", Done(told));
        return question;
    }

    private static JsonObject Built(Heap heap, ToldEntry[] told, double today)
    {
        var mixture = Mixture.Of(
            new MixtureQuestion { Ingredients = [.. heap.Ingredients], Water = heap.WaterLitres }
        );
        var json = new JsonObject
        {
            ["volume_m3"] = mixture.Typical.FilledVolume / 1000,
            ["age_days"] = Math.Max(0, today),
            ["container"] = heap.Bin.Shape switch
            {
                BinShape.Windrow => "windrow",
                BinShape.Cone => "open",
                BinShape.Ring => "ring",
                _ => "bay",
            },
            // A heap that is followed was built by a sheet, at one go.
            ["fed"] = "batch",
            ["materials"] = Materials(mixture),
        };
        if (told.Select(t => t.Deed).OfType<CoveredDeed>().LastOrDefault() is { } cover)
        {
            json["covered"] = cover.Kind == "straw" ? "breathable" : cover.Kind;
        }

        return json;
    }

    private static JsonArray Materials(Mixture mixture)
    {
        const double Only = 0.9; // shares of the loose volume
        const double Most = 0.5;
        const double Some = 0.12;
        var litres = mixture
            .Parts.Select(p => p.Typical.LooseVolume * p.Ingredient.Amount.Typical)
            .ToArray();
        var all = litres.Sum();
        return
        [
            .. mixture.Parts.Select(
                (part, at) =>
                    (JsonNode)
                        new JsonObject
                        {
                            [part.Ingredient.Material is null ? "name" : "material"] =
                                part.Ingredient.Material?.Id ?? part.Ingredient.Name,
                            ["share"] = (litres[at] / all) switch
                            {
                                >= Only => "only",
                                >= Most => "most",
                                >= Some => "some",
                                _ => "little",
                            },
                        }
            ),
        ];
    }

    private static JsonObject Weather(ToldEntry[] told, HeapRecord record, double today)
    {
        var json = new JsonObject();
        var air = told.Where(t => t.Day >= today - DaysOfAir && record.Believed(t.Entry.Id))
            .Select(t => t.Entry)
            .OfType<TemperatureEntry>()
            .LastOrDefault(r => r.Air is not null)
            ?.Air?.DegreesCelsius;
        if (air is >= -50 and <= 55)
        {
            json["air_c"] = air;
        }

        var rain = told.Where(t => t.Day >= today - DaysOfRain)
            .Select(t => t.Deed)
            .OfType<RainedDeed>()
            .Sum(r => r.Millimetres);
        if (rain >= MuchRain)
        {
            json["lately"] = new JsonArray("wet");
        }

        return json;
    }

    private static JsonArray Readings(ToldEntry[] told, HeapRecord record) =>
        [
            .. told.Where(t =>
                    t.Entry is TemperatureEntry { Temperature.DegreesCelsius: >= -50 and <= 120 }
                    && record.Believed(t.Entry.Id)
                )
                .TakeLast(MostReadings)
                .Select(t => (t.Day, Reading: (TemperatureEntry)t.Entry))
                .Select(t =>
                    (JsonNode)
                        new JsonObject
                        {
                            ["day"] = t.Day,
                            ["temperature_c"] = t.Reading.Temperature.DegreesCelsius,
                            ["spot"] = EntryWords.Of(t.Reading.Spot),
                        }
                ),
        ];

    // What was squeezed, smelt and seen in the last days, as long as the heap was not changed since.
    private static JsonObject Signs(ToldEntry[] told, double today)
    {
        var since = told.Where(t =>
                t.Deed is TurnedDeed or WateredDeed or AddedDeed or MovedDeed or SplitDeed
            )
            .Select(t => t.Day)
            .DefaultIfEmpty(0)
            .Last();
        SignEntry[] signs =
        [
            .. told.Where(t => t.Day >= Math.Max(since, today - DaysOfSigns))
                .Select(t => t.Entry)
                .OfType<SignEntry>(),
        ];
        var json = new JsonObject();
        Put(
            json,
            "squeeze",
            Places(signs.SelectMany(s => s.Squeeze.Select(q => (q.Place, EntryWords.Of(q.Word)))))
        );
        Put(json, "feel", Places(signs.SelectMany(s => s.Feel)));
        Put(json, "smell", Smell(signs));
        Put(json, "see", List(signs.SelectMany(s => s.See)));
        Put(json, "visitors", List(signs.SelectMany(s => s.Visitors)));
        return json;
    }

    // A nose that smells something now overrules one that smelt nothing then, and the other way round.
    private static JsonArray Smell(SignEntry[] signs) =>
        signs.LastOrDefault(s => s.Smell.Count > 0) is { } last
            ? List(
                last.Smell.Contains("none")
                    ? ["none"]
                    : signs.SelectMany(s => s.Smell).Where(w => w != "none")
            )
            : [];

    private static JsonArray Done(ToldEntry[] told) =>
        [
            .. told.Select(t => (t.Day, Word: t.Deed is null ? "" : EntryWords.Of(t.Deed)))
                .Where(t => DiagnoseDeeds.Contains(t.Word))
                .TakeLast(MostDeeds)
                .Select(t => (JsonNode)new JsonObject { ["day"] = t.Day, ["do"] = t.Word }),
        ];

    private static readonly HashSet<string> DiagnoseDeeds = new(StringComparer.Ordinal)
    {
        "turn",
        "water",
        "add",
        "cover",
        "move",
    };

    // The last word for a place counts.
    private static JsonObject Places(IEnumerable<(SignPlace Place, string Word)> words)
    {
        var json = new JsonObject();
        foreach (var (place, word) in words)
        {
            json[EntryWords.Of(place)] = word;
        }

        return json;
    }

    private static JsonArray List(IEnumerable<string> words) =>
        [.. words.Distinct(StringComparer.Ordinal).Select(w => (JsonNode)w)];

    private static void Put(JsonObject json, string field, JsonNode value)
    {
        if (value is JsonObject { Count: > 0 } or JsonArray { Count: > 0 })
        {
            json[field] = value;
        }
    }
}
