using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Core.Readings.Deeds;

namespace Heapwright.App.Batches;

/// <summary>A material that went into a heap, with the beds that compost of the heap went to.</summary>
/// <param name="Heap">The heap.</param>
/// <param name="Materials">What went into it, while building and later.</param>
/// <param name="Loads">What is known of where it came from.</param>
/// <param name="Uses">Where it went.</param>
public sealed record BatchTrace(
    KeptHeap Heap,
    ImmutableArray<string> Materials,
    ImmutableArray<AddedStuff> Loads,
    ImmutableArray<BatchUse> Uses
)
{
    /// <summary>The heaps in which a material or a bed is named.</summary>
    /// <param name="reader">Reads the diaries.</param>
    /// <param name="word">A part of the name of a material or a bed; all heaps where it is empty.</param>
    /// <param name="cancel">Ends the work.</param>
    public static async Task<ImmutableArray<BatchTrace>> Of(
        ReadDiary reader,
        string word,
        CancellationToken cancel
    )
    {
        ArgumentNullException.ThrowIfNull(reader);
        ArgumentNullException.ThrowIfNull(word);
        var traces = ImmutableArray.CreateBuilder<BatchTrace>();
        foreach (var (heap, _) in await reader.Heaps(cancel))
        {
            if (await reader.Of(heap.Id, null, cancel) is { } record)
            {
                var trace = Of(record);
                if (trace.Names(word.Trim()))
                {
                    traces.Add(trace);
                }
            }
        }

        return traces.ToImmutable();
    }

    /// <summary>The trace of one heap.</summary>
    /// <param name="record">The heap with its diary.</param>
    public static BatchTrace Of(HeapRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var loads = LoadsOf(record);
        return new BatchTrace(
            record.Kept,
            [
                .. record
                    .Heap()
                    .Ingredients.Select(i => i.Name)
                    .Concat(loads.Select(l => l.Name))
                    .Distinct(StringComparer.OrdinalIgnoreCase),
            ],
            loads,
            BatchRecord.UsesOf(record)
        );
    }

    /// <summary>What went into a heap while building and later, as far as the diary tells where it came from.</summary>
    /// <param name="record">The heap with its diary.</param>
    public static ImmutableArray<AddedStuff> LoadsOf(HeapRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return
        [
            .. record.Events.SelectMany(e =>
                e.Deed switch
                {
                    BuiltDeed built => built.Loads,
                    AddedDeed added => added.Ingredients,
                    _ => [],
                }
            ),
        ];
    }

    /// <summary>What went in, each with where it came from as far as that is known.</summary>
    public IEnumerable<string> Origins =>
        Materials.Select(name =>
            name
            + string.Concat(
                Loads
                    .Where(l => string.Equals(l.Name, name, StringComparison.OrdinalIgnoreCase))
                    .Select(l => EntryText.Origin(l.Giver, l.Since))
                    .Distinct(StringComparer.Ordinal)
            )
        );

    /// <summary>Traces in JSON and in text; a "no" where there is none.</summary>
    /// <param name="traces">The traces.</param>
    /// <param name="measures">The units and number format of the text.</param>
    public static Answer Answer(ImmutableArray<BatchTrace> traces, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(measures);
        return new Answer(
            new JsonObject
            {
                ["schema"] = Json.Schema,
                ["heaps"] = new JsonArray([
                    .. traces.Select(t => new JsonObject
                    {
                        ["id"] = t.Heap.Id.ToString(),
                        ["name"] = t.Heap.Name,
                        ["materials"] = Json.Of(t.Materials),
                        ["loads"] = new JsonArray([.. t.Loads.Select(Load)]),
                        ["used"] = new JsonArray([.. t.Uses.Select(u => u.ToJson())]),
                    }),
                ]),
            },
            !traces.IsEmpty,
            traces.IsEmpty
                ? Words.Of("batches.trace_none")
                : string.Join('\n', traces.SelectMany(t => t.Lines(measures)))
        );
    }

    private static JsonObject Load(AddedStuff load) =>
        new()
        {
            ["name"] = load.Name,
            ["giver"] = load.Giver.Length > 0 ? load.Giver : null,
            ["since"] = EntryJson.Date(load.Since),
        };

    private bool Names(string word) =>
        word.Length == 0
        || Materials
            .Concat(Uses.Select(u => u.Bed))
            .Concat(Loads.Select(l => l.Giver))
            .Any(n => n.Contains(word, StringComparison.OrdinalIgnoreCase));

    private IEnumerable<string> Lines(Measures measures)
    {
        var zone = Heap.TimeZone();
        yield return Words.Of(
            "batches.trace_line",
            null,
            Heap.Name,
            DiaryAnswers.Day(Heap.BuiltAt, zone),
            string.Join(", ", Origins)
        );
        foreach (var use in Uses)
        {
            yield return "  " + BatchText.Use(use, zone, measures);
        }

        if (Uses.IsEmpty)
        {
            yield return "  " + Words.Of("batches.used_none");
        }
    }
}
