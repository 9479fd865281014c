using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Sites;
using Heapwright.Core.Materials.Measurements;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using NodaTime;
using NodaTime.Text;

namespace Heapwright.App.Diary;

/// <summary>
/// The question of <c>finish</c> as far as a heap and its diary answer it: its age, the days since it was warm, the core
/// now, whether a turn warmed it again, the signs of late, and the last result of every test.
/// </summary>
public static class DoneQuestion
{
    /// <summary>Signs older than this say nothing of how far it has come.</summary>
    public const double DaysOfSigns = 21;

    private const double Warm = 40; // °C: below it the heat is over
    private const double DaysOfReadings = 7;
    private const double DaysToReheat = 5;
    private const double HeatsAgain = 15; // K: the line of "heats_again" in finish-classes.csv
    private const double OldestDays = 3660;

    /// <summary>What is known of a heap now; null for one that is not built yet, or built too long ago.</summary>
    /// <param name="record">The heap with its diary.</param>
    /// <param name="now">The present.</param>
    public static JsonObject? Of(HeapRecord record, Instant now)
    {
        ArgumentNullException.ThrowIfNull(record);
        var zone = record.Kept.TimeZone();
        var today = record.DayOf(now.ToDateTimeOffset());
        if (today is < 0 or > OldestDays)
        {
            return null;
        }

        var told = ToldEntry.Of(record, today);
        CoreReading[] core =
        [
            .. told.Where(t => record.Believed(t.Entry.Id))
                .Select(t => (t.Day, Reading: t.Entry as TemperatureEntry))
                .Where(t => t.Reading is { Spot: ProbeSpot.Core })
                .Select(t => new CoreReading(
                    t.Day,
                    t.Reading!.Temperature.DegreesCelsius,
                    t.Reading.Air?.DegreesCelsius
                )),
        ];
        var question = new JsonObject
        {
            ["today"] = LocalDatePattern.Iso.Format(now.InZone(zone).Date),
            ["age_days"] = SiteDays.Between(record.Kept.BuiltAt, now, zone),
        };
        AddHeat(question, core, told, today);
        AddSigns(question, told, today);
        foreach (var tested in Results(told))
        {
            var (field, part) = HomeTests.Asked(tested);
            question[field] = part;
        }

        return question;
    }

    /// <summary>The tests that were begun and not read yet, the last of each.</summary>
    /// <param name="record">The heap with its diary.</param>
    public static ImmutableArray<EventEntry> Begun(HeapRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return
        [
            .. record
                .Events.Where(e => e.Deed is TestedDeed)
                .GroupBy(e => ((TestedDeed)e.Deed).Test)
                .Select(g => g.Last())
                .Where(e => ((TestedDeed)e.Deed).IsBegun),
        ];
    }

    // The last result of every test.
    private static IEnumerable<TestedDeed> Results(ToldEntry[] told) =>
        told.Select(t => t.Deed)
            .OfType<TestedDeed>()
            .Where(t => !t.IsBegun)
            .GroupBy(t => t.Test)
            .Select(g => g.Last());

    private static void AddHeat(
        JsonObject question,
        CoreReading[] core,
        ToldEntry[] told,
        double today
    )
    {
        if (core is not [.., var newest])
        {
            return;
        }

        if (today - newest.Day <= DaysOfReadings)
        {
            question["core_c"] = newest.Celsius;
            question["air_c"] = core.Where(c => today - c.Day <= DaysOfReadings)
                .Select(c => c.AirCelsius)
                .LastOrDefault(a => a is >= -40 and <= 60);
        }

        // Only a heap that was seen to be warm, and then seen to be so no longer, has cured since.
        var hot = Array.FindLastIndex(core, c => c.Celsius >= Warm);
        if (hot >= 0 && hot + 1 < core.Length)
        {
            question["cured_days"] = Math.Max(0, today - core[hot + 1].Day);
        }

        if (told.LastOrDefault(t => t.Deed is TurnedDeed) is { } turn)
        {
            AddReheat(question, core, told, turn.Day);
        }
    }

    // How much warmer it became after the last turn: its hottest above its coldest before that, since the turn itself cools.
    // Not told where nobody looked before and a day after it, nor where it is hot now and so cannot have stayed cool.
    private static void AddReheat(
        JsonObject question,
        CoreReading[] core,
        ToldEntry[] told,
        double turned
    )
    {
        var before = core.LastOrDefault(c => c.Day <= turned && c.Day >= turned - DaysToReheat);
        CoreReading[] after =
        [
            .. core.Where(c => c.Day > turned && c.Day <= turned + DaysToReheat),
        ];
        if (before is null || !after.Any(c => c.Day >= turned + 1))
        {
            return;
        }

        var rise = Rise(before, after);
        if (rise < HeatsAgain && core[^1].Celsius >= Warm)
        {
            return;
        }

        var wetted = told.Any(t => t.Deed is WateredDeed && Math.Abs(t.Day - turned) <= 1);
        var squeeze = told.Where(t => Math.Abs(t.Day - turned) <= DaysToReheat)
            .Select(t => t.Entry)
            .OfType<SignEntry>()
            .SelectMany(s => s.Squeeze)
            .Where(s => s.Place == SignPlace.Core)
            .Select(s => (SqueezeWord?)s.Word)
            .LastOrDefault();
        question["reheat"] = new JsonObject
        {
            ["rise_c"] = rise,
            ["turned"] = true,
            ["wetted"] =
                wetted ? true
                : squeeze is null ? null
                : squeeze is not (SqueezeWord.Dust or SqueezeWord.Dry),
        };
    }

    // Where the first reading after the turn is the hottest, it had warmed before anyone looked: the air is what it rose from.
    private static double Rise(CoreReading before, CoreReading[] after)
    {
        var hottest = Array.FindIndex(after, c => c.Celsius == after.Max(a => a.Celsius));
        var from =
            hottest > 0
                ? after.Take(hottest).Min(c => c.Celsius)
                : after[0].AirCelsius ?? before.Celsius;
        return Math.Max(0, after[hottest].Celsius - from);
    }

    private static void AddSigns(JsonObject question, ToldEntry[] told, double today)
    {
        SignEntry[] signs =
        [
            .. told.Where(t => today - t.Day <= DaysOfSigns)
                .Select(t => t.Entry)
                .OfType<SignEntry>(),
        ];
        Add(question, "smell", signs.LastOrDefault(s => s.Smell.Count > 0)?.Smell);
        Add(question, "see", signs.LastOrDefault(s => s.See.Count > 0)?.See);
        Add(question, "visitors", signs.LastOrDefault(s => s.Visitors.Count > 0)?.Visitors);
    }

    private static void Add(JsonObject question, string field, IReadOnlyList<string>? words)
    {
        if (words is { Count: > 0 })
        {
            question[field] = new JsonArray([.. words.Select(w => (JsonNode)w)]);
        }
    }

    private sealed record CoreReading(double Day, double Celsius, double? AirCelsius);
}
