using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Sites;
using Heapwright.Core.Heaps;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>A heap with its diary: all that is known of it.</summary>
public sealed class HeapRecord
{
    private static readonly HashSet<string> Simulated = new(StringComparer.Ordinal)
    {
        "turn",
        "water",
        "add",
        "cover",
        "move",
        "split",
    };

    private readonly ImmutableArray<Bay> bays;

    /// <summary>A heap with its diary.</summary>
    /// <param name="kept">The heap.</param>
    /// <param name="entries">Its entries, in the order in which they came.</param>
    /// <param name="air">The air of its site through the year; null where nobody typed it.</param>
    /// <param name="bays">The bays it may have been moved to; where one is not among them, its size is not known.</param>
    public HeapRecord(
        KeptHeap kept,
        ImmutableArray<JudgedEntry> entries,
        MonthlyAir? air = null,
        ImmutableArray<Bay> bays = default
    )
    {
        Kept = kept;
        Air = air;
        this.bays = bays.IsDefault ? [] : bays;
        Entries = entries;
        Diary = HeapDiary.Of(entries.Select(e => e.Entry));
        Verdicts = StandingVerdicts.Of(entries, Diary, kept.BuiltAt.ToDateTimeOffset());
    }

    /// <summary>The heap as it is kept.</summary>
    public KeptHeap Kept { get; }

    /// <summary>The air of its site through the year; null where nobody typed it.</summary>
    public MonthlyAir? Air { get; }

    /// <summary>All its entries, in the order in which they came.</summary>
    public ImmutableArray<JudgedEntry> Entries { get; }

    /// <summary>What stands of them.</summary>
    public HeapDiary Diary { get; }

    /// <summary>The verdicts on what stands, by the id of the entry; see <see cref="StandingVerdicts"/>.</summary>
    public ImmutableDictionary<Guid, PlausibilityVerdict> Verdicts { get; }

    /// <summary>The heap as the models take it.</summary>
    /// <exception cref="InputProblem">What it was built of cannot be read.</exception>
    public Heap Heap() => HeapReader.Read(Kept);

    /// <summary>What was done to it and stands, the earliest first.</summary>
    public IEnumerable<EventEntry> Events =>
        Diary.Standing.Select(s => s.Entry).OfType<EventEntry>();

    /// <summary>Whether it is no longer followed.</summary>
    public bool IsClosed => Events.Any(e => e.Deed is ClosedDeed);

    /// <summary>The bay it stands in, and since when; null for none of the site's. Only moves among the entries are known.</summary>
    public (Guid? Bay, Instant Since) Place =>
        Events.LastOrDefault(e => e.Deed is MovedDeed) is { } move
            ? (((MovedDeed)move.Deed).Bay, Instant.FromDateTimeOffset(move.At))
            : (Kept.BayId, Kept.BuiltAt);

    /// <summary>Whether another heap was put onto it: what it holds since then nobody has said.</summary>
    public bool IsMerged => Events.Any(e => e.Deed is MergedDeed);

    /// <summary>Days since building, as the models count them.</summary>
    /// <param name="moment">The moment.</param>
    public double DayOf(DateTimeOffset moment) =>
        (moment - Kept.BuiltAt.ToDateTimeOffset()).TotalDays;

    /// <summary>
    /// The heap and its diary as a question of <c>forecast</c> (without weather): what it was built of, the events since,
    /// and the readings a heap can have had. Readings of which the unit is in question, or that no heap has, stay in the
    /// diary and are left out here.
    /// </summary>
    public JsonObject Question()
    {
        var question = JsonObject.Create(Kept.Question)?.DeepClone().AsObject() ?? [];
        question["start"] = EntryJson.Time(Kept.BuiltAt.InZone(Kept.TimeZone()).ToDateTimeOffset());
        var events = new JsonArray();
        var readings = new JsonArray();
        foreach (var standing in Diary.Standing)
        {
            var day = DayOf(standing.Entry.At);
            switch (standing.Entry)
            {
                case EventEntry happening when day >= 0 && Event(happening, day) is { } json:
                    events.Add((JsonNode)json);
                    break;
                case TemperatureEntry reading when day >= 0 && Believed(reading.Id):
                    readings.Add((JsonNode)Reading(reading, day));
                    break;
            }
        }

        question["events"] = events;
        question["readings"] = readings;
        return question;
    }

    /// <summary>Whether a reading is one the models may use.</summary>
    /// <param name="entryId">The entry.</param>
    public bool Believed(Guid entryId) =>
        !Verdicts.TryGetValue(entryId, out var verdict) || verdict.IsBelieved;

    private JsonObject? Event(EventEntry entry, double day)
    {
        if (!Simulated.Contains(EntryWords.Of(entry.Deed)))
        {
            return null;
        }

        var said = JsonNode.Parse(EntryJson.Said(entry))!.AsObject();
        var json = new JsonObject { ["day"] = day };
        foreach (var name in DeedReader.Fields)
        {
            if (said[name] is { } value)
            {
                json[name] = value.DeepClone();
            }
        }

        // To a model a heap is in a bin, and what became of the rest is nothing to it.
        json.Remove("bay");
        json.Remove("other_heap");
        if (entry.Deed is MovedDeed move && bays.FirstOrDefault(b => b.Id == move.Bay) is { } bay)
        {
            json["bin"] = SiteQuestions.Bin(bay);
        }

        // Where stuff came from is nothing to a model.
        foreach (var stuff in json["ingredients"]?.AsArray().OfType<JsonObject>() ?? [])
        {
            stuff.Remove("giver");
            stuff.Remove("since");
        }

        return json;
    }

    private static JsonObject Reading(TemperatureEntry reading, double day)
    {
        var json = new JsonObject
        {
            ["day"] = day,
            ["temperature_c"] = reading.Temperature.DegreesCelsius,
            ["spot"] = EntryWords.Of(reading.Spot),
        };
        if (reading.Depth is { } depth)
        {
            json["depth_cm"] = depth.Centimeters;
        }

        return json;
    }
}
