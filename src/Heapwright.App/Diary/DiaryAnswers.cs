using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary.Tables;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Core.Readings;
using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>What is told of heaps and diaries, in JSON and in text.</summary>
public static class DiaryAnswers
{
    /// <summary>The diary of a heap as a table (CSV); in JSON it stands in <c>csv</c>.</summary>
    /// <param name="record">The heap.</param>
    /// <param name="measures">The units and number format of the sentences.</param>
    public static Answer Table(HeapRecord record, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(record);
        var table = Tables.DiaryTable.Of(record, measures);
        return new Answer(
            new JsonObject
            {
                ["schema"] = 1,
                ["heap"] = record.Kept.Id.ToString(),
                ["csv"] = table,
            },
            Yes: true,
            table
        );
    }

    /// <summary>The heaps.</summary>
    /// <param name="heaps">The heaps with the number of their entries.</param>
    /// <param name="now">The moment.</param>
    public static Answer List(ImmutableArray<(KeptHeap Heap, long Entries)> heaps, Instant now)
    {
        var json = new JsonArray();
        var text = new List<string>();
        foreach (var (heap, count) in heaps)
        {
            var one = Of(heap, now);
            one["entries"] = count;
            json.Add((JsonNode)one);
            text.Add(Words.Of("diary.heap_line", null, heap.Id, heap.Name, heap.DayOf(now), count));
        }

        return new Answer(
            new JsonObject { ["schema"] = Json.Schema, ["heaps"] = json },
            Yes: true,
            text.Count == 0 ? Words.Of("diary.heaps_none") : string.Join('\n', text)
        );
    }

    /// <summary>A heap that was started.</summary>
    /// <param name="heap">The heap.</param>
    /// <param name="now">The moment.</param>
    public static Answer Started(KeptHeap heap, Instant now)
    {
        ArgumentNullException.ThrowIfNull(heap);
        return new Answer(
            new JsonObject { ["schema"] = Json.Schema, ["heap"] = Of(heap, now) },
            Yes: true,
            Words.Of("diary.started", null, heap.Name, heap.Id)
        );
    }

    /// <summary>A heap and its diary.</summary>
    /// <param name="record">The heap with its diary.</param>
    /// <param name="now">The moment.</param>
    /// <param name="measures">The units and number format of the text.</param>
    public static Answer Show(HeapRecord record, Instant now, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(record);
        var heap = record.Kept;
        var zone = heap.TimeZone();
        var entries = new JsonArray();
        var text = new List<string>
        {
            Words.Of(
                "diary.heap_head",
                null,
                heap.Name,
                heap.Id,
                Local(heap.BuiltAt, zone),
                heap.DayOf(now)
            ),
        };
        foreach (var standing in record.Diary.Standing)
        {
            var entry = standing.Entry;
            var verdict = record.Verdicts.GetValueOrDefault(entry.Id);
            entries.Add((JsonNode)Entry(standing, verdict, measures));
            var line =
                $"{Local(Instant.FromDateTimeOffset(entry.At), zone)}  {EntryText.Of(entry, measures)}";
            var doubt = EntryText.Of(verdict, measures);
            var was =
                standing.Corrections.Count > 0
                    ? Words.Of("diary.corrected", null, EntryText.Of(standing.First, measures))
                    : "";
            text.Add(string.Join("; ", new[] { line, was, doubt }.Where(t => t.Length > 0)));
        }

        text.AddRange(
            record.Diary.StruckOut.Select(s =>
                $"{Local(Instant.FromDateTimeOffset(s.First.At), zone)}  {Words.Of("diary.struck", null, EntryText.Of(s.First, measures))}"
            )
        );
        if (record.Entries.IsEmpty)
        {
            text.Add(Words.Of("diary.entries_none"));
        }

        if (record.Diary.Waiting.Count > 0)
        {
            text.Add(Words.Of("diary.waiting", null, record.Diary.Waiting.Count));
        }

        var json = Of(heap, now);
        json["question"] = JsonObject.Create(heap.Question)?.DeepClone();
        return new Answer(
            new JsonObject
            {
                ["schema"] = Json.Schema,
                ["heap"] = json,
                ["entries"] = entries,
                ["struck_out"] = new JsonArray([
                    .. record.Diary.StruckOut.Select(s => Entry(s, null, measures)),
                ]),
                ["waiting"] = record.Diary.Waiting.Count,
            },
            Yes: true,
            string.Join('\n', text)
        );
    }

    /// <summary>Whether a diary is as it was written; a "no" where it is not.</summary>
    /// <param name="check">The check.</param>
    public static Answer Checked(ChainCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return new Answer(
            new JsonObject
            {
                ["schema"] = Json.Schema,
                ["whole"] = check.IsWhole,
                ["entries"] = check.Entries,
                ["first_wrong"] = check.FirstWrong,
                ["head_sha256"] = check.Head,
            },
            check.IsWhole,
            check.IsWhole
                ? Words.Of("diary.check_whole", null, check.Entries, check.Head)
                : Words.Of("diary.check_broken", null, check.FirstWrong!.Value, check.Head)
        );
    }

    /// <summary>What became of entries; a "no" where one was refused.</summary>
    /// <param name="outcomes">The outcomes, in the order of the entries.</param>
    /// <param name="measures">The units and number format of the sentences.</param>
    public static Answer Results(ImmutableArray<EntryOutcome> outcomes, Measures measures) =>
        new(
            new JsonObject
            {
                ["schema"] = Json.Schema,
                ["results"] = new JsonArray([.. outcomes.Select(o => Result(o, measures))]),
            },
            outcomes.All(o => o.Status != AppendStatus.Refused),
            string.Join('\n', outcomes.Select(o => Line(o, measures)))
        );

    /// <summary>What became of a table; a "no" where rows were refused.</summary>
    /// <param name="report">The report.</param>
    /// <param name="measures">The units and number format of the sentences.</param>
    public static Answer Imported(ImportReport report, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(report);
        var refused = report.FirstRefused;
        var text = new List<string>
        {
            Words.Of(
                "diary.import_done",
                null,
                report.Rows,
                report.Kept,
                report.Doubted,
                report.AlreadyThere,
                report.Refused
            ),
        };
        text.AddRange(
            refused
                .Take(50)
                .Select(r => Words.Of("diary.import_refused", null, r.Line, measures.Say(r.Why)))
        );
        if (report.Refused > 50)
        {
            text.Add(Words.Of("diary.import_refused_more", null, report.Refused - 50));
        }

        return new Answer(
            new JsonObject
            {
                ["schema"] = Json.Schema,
                ["rows"] = report.Rows,
                ["kept"] = report.Kept,
                ["already"] = report.AlreadyThere,
                ["doubted"] = report.Doubted,
                ["refused"] = report.Refused,
                ["refused_rows"] = new JsonArray([
                    .. refused.Select(r => new JsonObject
                    {
                        ["line"] = r.Line,
                        ["why"] = Measures.Metric.Say(r.Why),
                    }),
                ]),
            },
            report.Refused == 0,
            string.Join('\n', text)
        );
    }

    /// <summary>A day at the heap, as it stands in text.</summary>
    /// <param name="moment">The moment.</param>
    /// <param name="zone">The zone of the heap.</param>
    public static string Day(Instant moment, DateTimeZone zone) => Local(moment, zone)[..10];

    /// <summary>A moment at the heap, as it stands in text.</summary>
    /// <param name="moment">The moment.</param>
    /// <param name="zone">The zone of the heap.</param>
    internal static string Local(Instant moment, DateTimeZone zone) =>
        moment
            .InZone(zone)
            .LocalDateTime.ToString("uuuu-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static JsonObject Of(KeptHeap heap, Instant now) =>
        new()
        {
            ["id"] = heap.Id.ToString(),
            ["name"] = heap.Name,
            ["built_at"] = EntryJson.Time(heap.BuiltAt.InZone(heap.TimeZone()).ToDateTimeOffset()),
            ["zone"] = heap.Zone,
            ["aim"] = heap.Aim,
            ["day"] = heap.DayOf(now),
            ["bay_id"] = heap.BayId?.ToString(),
            ["sheet_id"] = heap.SheetId?.ToString(),
        };

    private static JsonObject Entry(
        StandingEntry standing,
        PlausibilityVerdict? verdict,
        Measures measures
    )
    {
        var json = JsonNode.Parse(EntryJson.Said(standing.Entry))!.AsObject();
        if (standing.Entry.By.Length > 0)
        {
            json["by"] = standing.Entry.By;
        }

        json["way"] = EntryWords.Of(standing.Entry.Way);
        if (standing.First.Id != standing.Entry.Id)
        {
            json["in_place_of"] = standing.First.Id.ToString();
        }

        if (verdict is not null)
        {
            json["verdict"] = Verdict(verdict, measures);
        }

        return json;
    }

    private static JsonObject Verdict(PlausibilityVerdict verdict, Measures measures)
    {
        var json = new JsonObject
        {
            ["status"] = EntryWords.Of(verdict.Status),
            ["reasons"] = Json.Of(verdict.Reasons.Select(measures.Say)),
        };
        if (verdict.Suggested is { } suggested)
        {
            json["suggested_c"] = suggested.DegreesCelsius;
        }

        return json;
    }

    private static JsonObject Result(EntryOutcome outcome, Measures measures)
    {
        var json = new JsonObject
        {
            ["id"] = outcome.Id?.ToString(),
            ["status"] = outcome.Status switch
            {
                AppendStatus.Kept => "kept",
                AppendStatus.AlreadyThere => "already",
                _ => "refused",
            },
        };
        if (outcome.Why is { } why)
        {
            json["why"] = measures.Say(why);
        }

        if (outcome.Verdict is { } verdict)
        {
            json["verdict"] = Verdict(verdict, measures);
        }

        return json;
    }

    private static string Line(EntryOutcome outcome, Measures measures)
    {
        var line = outcome.Status switch
        {
            AppendStatus.Kept => Words.Of("diary.kept", null, outcome.Id!.Value),
            AppendStatus.AlreadyThere => Words.Of("diary.already", null, outcome.Id!.Value),
            _ => Words.Of("diary.refused", null, measures.Say(outcome.Why!)),
        };
        var doubt = EntryText.Of(outcome.Verdict, measures);
        return doubt.Length == 0 ? line : line + "\n" + doubt;
    }
}
