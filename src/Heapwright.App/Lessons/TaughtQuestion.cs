using System.Text.Json.Nodes;
using Heapwright.App.Diary;
using Heapwright.Core.Lessons;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;

namespace Heapwright.App.Lessons;

/// <summary>The questions that look back on heaps of the diary, as JSON, so that the same question has the same answer.</summary>
public static class TaughtQuestion
{
    // So many that two heaps still fit into one question; the fit itself averages many readings.
    private const int MostReadings = 3000;

    /// <summary>What a heap taught.</summary>
    /// <param name="record">The heap with its diary.</param>
    public static JsonObject Of(HeapRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var question = new JsonObject { ["heap"] = Past(record) };
        var spread = record
            .Events.Where(e => e.Deed is SpreadDeed && record.DayOf(e.At) > 0)
            .ToArray();
        if (Measured(record, spread) is { } measured)
        {
            question["yield"] = measured;
        }
        else if (spread.Length > 0)
        {
            question["yield"] = new JsonObject
            {
                ["l"] = spread.Sum(e => ((SpreadDeed)e.Deed).Litres),
                ["day"] = spread.Max(e => record.DayOf(e.At)),
                ["all"] = record.IsClosed,
            };
        }

        return question;
    }

    /// <summary>The same for the record of a batch; null where nothing was read or taken out that tells anything.</summary>
    /// <param name="record">The heap with its diary.</param>
    public static JsonObject? ForRecord(HeapRecord record)
    {
        var question = Of(record);
        return
            question["heap"]!["readings"]!.AsArray().Count > 0
            || question["heap"]!["signs"]!.AsArray().Count > 0
            || question["yield"] is not null
            ? question
            : null;
    }

    /// <summary>A heap held against another one.</summary>
    /// <param name="first">The heap that is fitted.</param>
    /// <param name="second">The other one.</param>
    /// <param name="decides">The figure that decides; null for the usual one.</param>
    public static JsonObject Against(HeapRecord first, HeapRecord second, string? decides)
    {
        var question = new JsonObject { ["heap"] = Past(first), ["other"] = Past(second) };
        Decide(question, decides);
        return question;
    }

    /// <summary>A heap held against itself with something not done.</summary>
    /// <param name="record">The heap.</param>
    /// <param name="without">What is not done; one of <see cref="ComparisonReader.Without"/>.</param>
    /// <param name="decides">The figure that decides; null for the usual one.</param>
    public static JsonObject Without(HeapRecord record, string without, string? decides)
    {
        var question = new JsonObject { ["heap"] = Past(record), ["without"] = without };
        Decide(question, decides);
        return question;
    }

    // A volume that was measured while the model still follows the heap tells of all of it, with what was gone by then.
    private static JsonObject? Measured(HeapRecord record, EventEntry[] spread)
    {
        var last = record
            .Events.Select(e => (Day: record.DayOf(e.At), Litres: Litres(e.Deed)))
            .LastOrDefault(m => m is { Day: > 0 and <= HeapLessons.LongestDays, Litres: > 0 });
        return last.Litres is not { } litres
            ? null
            : new JsonObject
            {
                ["l"] =
                    litres
                    + spread
                        .Where(e => record.DayOf(e.At) <= last.Day)
                        .Sum(e => ((SpreadDeed)e.Deed).Litres),
                ["day"] = last.Day,
                ["all"] = true,
            };
    }

    private static double? Litres(HeapDeed deed) =>
        deed is TestedDeed { Test: HomeTest.Amount } tested
            ? tested.Values.FirstOrDefault(v => v.Field == "volume_l")?.Value
            : null;

    private static void Decide(JsonObject question, string? decides)
    {
        if (decides is not null)
        {
            question["by"] = decides;
        }
    }

    // The heap with all that was read and done, as a question of forecast.
    private static JsonObject Past(HeapRecord record)
    {
        var question = record.Question();
        question["signs"] = OutlookQuestion.Signs(record);
        HeapAir.Put(question, record, HeapLessons.LongestDays);

        foreach (var name in (string[])["readings", "signs", "events"])
        {
            question[name] = new JsonArray([
                .. question[name]!
                    .AsArray()
                    .Where(e => e!["day"]!.GetValue<double>() <= HeapLessons.LongestDays)
                    .Select(e => e!.DeepClone()),
            ]);
        }

        var readings = question["readings"]!.AsArray();
        var every = ((readings.Count - 1) / MostReadings) + 1;
        if (every > 1)
        {
            question["readings"] = new JsonArray([
                .. readings.Where((_, i) => i % every == 0).Select(r => r!.DeepClone()),
            ]);
        }

        question["from_day"] = question["readings"]!
            .AsArray()
            .Concat(question["signs"]!.AsArray())
            .Select(e => e!["day"]!.GetValue<double>())
            .DefaultIfEmpty(0)
            .Max();
        return question;
    }
}
