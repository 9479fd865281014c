using System.Text.Json.Nodes;
using Heapwright.App.Sites;
using Heapwright.Core.Materials;
using Heapwright.Core.Readings;
using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>
/// The question of <c>forecast</c> for a heap with its diary: what was read and done, the squeezes, the air that was noted
/// beside it, and what is at hand to add.
/// </summary>
public static class OutlookQuestion
{
    /// <summary>Beyond this day the hot phase is long over and nothing is forecast.</summary>
    public const double LastDay = 120;

    // The present moves on in steps, so that looking twice asks nothing anew.
    private const double Step = 0.125; // d
    private const int MostStuff = 8;
    private const double DaysAhead = 22; // what decisions are followed for, and some more

    private static readonly MaterialProperty[] Needed =
    [
        MaterialProperty.Carbon,
        MaterialProperty.Nitrogen,
        MaterialProperty.Moisture,
        MaterialProperty.BulkDensity,
    ];

    /// <summary>
    /// The question; null where there is nothing to forecast: not built yet, closed, long cold, or another heap was put onto it, of
    /// which nobody has said what it holds.
    /// </summary>
    /// <param name="record">The heap.</param>
    /// <param name="contents">What the site has.</param>
    /// <param name="now">The present.</param>
    /// <param name="zone">The zone of the site.</param>
    public static JsonObject? Of(
        HeapRecord record,
        SiteContents contents,
        Instant now,
        DateTimeZone zone
    )
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(contents);
        var day = record.DayOf(now.ToDateTimeOffset());
        if (day < 0 || day > LastDay || record.IsClosed || record.IsMerged)
        {
            return null;
        }

        var question = record.Question();
        var present = Step * Math.Floor(day / Step);
        foreach (var standing in record.Diary.Standing)
        {
            var at = record.DayOf(standing.Entry.At);
            present = at <= day ? Math.Max(present, at) : present;
        }

        question["from_day"] = present;
        question["signs"] = Signs(record);
        HeapAir.Put(question, record, present + DaysAhead);

        Stock(question, contents, now, zone);
        if (
            new SiteQuestions(contents).Earlier(
                record.Place.Bay,
                question["bin"],
                record.Kept.Id
            ) is
            { } earlier
        )
        {
            question["earlier"] = earlier;
        }

        return question;
    }

    /// <summary>The squeezes of the core, as a field of <c>forecast</c>.</summary>
    /// <param name="record">The heap.</param>
    internal static JsonArray Signs(HeapRecord record)
    {
        var signs = new JsonArray();
        foreach (var sign in record.Diary.Standing.Select(s => s.Entry).OfType<SignEntry>())
        {
            var day = record.DayOf(sign.At);
            var core = sign.Squeeze.Where(s => s.Place == SignPlace.Core).ToArray();
            if (day >= 0 && core.Length > 0)
            {
                signs.Add(
                    (JsonNode)
                        new JsonObject
                        {
                            ["day"] = day,
                            ["squeeze"] = new JsonObject
                            {
                                ["core"] = core[0].Word.ToString().ToLowerInvariant(),
                            },
                        }
                );
            }
        }

        return signs;
    }

    private static void Stock(
        JsonObject question,
        SiteContents contents,
        Instant now,
        DateTimeZone zone
    )
    {
        var ask = new SiteQuestions(contents);
        var stock = new JsonArray();
        foreach (var entry in contents.Stock.Where(e => e.Amount > 0))
        {
            var known = contents.Material(entry.Material);
            if (
                known is not null
                && Needed.All(p => known.Properties[p] is not null)
                && stock.Count < MostStuff
            )
            {
                stock.Add(
                    (JsonNode)
                        ask.Ingredient(
                            entry.Material,
                            entry.Name,
                            entry.Amount,
                            entry.Unit,
                            SiteDays.Since(entry.Since, now, zone)
                        )
                );
            }
        }

        if (stock.Count == 0)
        {
            return;
        }

        question["stock"] = stock;
        var containers = question["containers"] as JsonObject ?? [];
        foreach (var (name, size) in ask.Containers())
        {
            if (!containers.ContainsKey(name))
            {
                containers[name] = size?.DeepClone();
            }
        }

        question["containers"] = containers;
    }
}
