using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.BuildSheets;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Lessons;
using Heapwright.App.Paper;
using Heapwright.App.Texts;
using Heapwright.Core.Bins;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Core.Simulation;
using NodaTime;

namespace Heapwright.App.Batches;

/// <summary>
/// The record of a batch, from what went in to where it went: materials, what was done, readings, what they show of rules
/// on heat, the beds, and the hash that covers the diary. Only what stands in the diary is told; nothing is filled in.
/// </summary>
public sealed class BatchRecord
{
    private readonly HeapRecord record;
    private readonly ChainCheck check;
    private readonly Instant now;

    private BatchRecord(HeapRecord record, ChainCheck check, Instant now, Measures measures)
    {
        (this.record, this.check, this.now) = (record, check, now);
        Measures = measures;
        var heap = record.Heap();
        var loads = BatchTrace.LoadsOf(record);
        Mixture = Mixture.Of(
            new MixtureQuestion { Ingredients = [.. heap.Ingredients], Water = heap.WaterLitres }
        );
        Parts =
        [
            .. Mixture.Parts.Select(p => new BatchPart(
                p.Ingredient,
                p.Typical.LooseVolume * p.Ingredient.Amount.Typical,
                p.Typical.WetMass * p.Ingredient.Amount.Typical,
                loads.FirstOrDefault(l =>
                    string.Equals(l.Name, p.Ingredient.Name, StringComparison.OrdinalIgnoreCase)
                )
            )),
        ];
        WaterLitres = heap.WaterLitres.Typical;
        Readings =
        [
            .. record
                .Diary.Standing.Select(s => s.Entry)
                .OfType<TemperatureEntry>()
                .Where(r => record.Believed(r.Id)),
        ];
        Uses = UsesOf(record);
        Heat = AskHeat(heap.Bin.Shape == BinShape.Windrow ? "windrow" : "bin");
    }

    /// <summary>The heap with its diary.</summary>
    public HeapRecord Record => record;

    /// <summary>The units of its text.</summary>
    public Measures Measures { get; }

    /// <summary>The mixture as it was built.</summary>
    public Mixture Mixture { get; }

    /// <summary>What went in when it was built.</summary>
    public ImmutableArray<BatchPart> Parts { get; }

    /// <summary>Water poured while building, litres, typically.</summary>
    public double WaterLitres { get; }

    /// <summary>The readings that can be believed.</summary>
    public ImmutableArray<TemperatureEntry> Readings { get; }

    /// <summary>Where it went.</summary>
    public ImmutableArray<BatchUse> Uses { get; }

    /// <summary>What the readings show of rules on heat; null where there is no reading.</summary>
    public HygieneAnswer? Heat { get; }

    /// <summary>Whether the diary is as it was written, and the hash that covers it.</summary>
    public ChainCheck Check => check;

    /// <summary>What it taught; null where that was not looked at.</summary>
    public TaughtHeap? Taught { get; init; }

    /// <summary>The rules that are for this kind of heap, with what the readings show of each.</summary>
    public IEnumerable<JsonNode> Verdicts =>
        Heat?.Answer.Json["rules"]!.AsArray()
            .OfType<JsonNode>()
            .Where(r => r["verdict"]!.GetValue<string>() != "not_applicable")
        ?? [];

    /// <summary>The record of a heap.</summary>
    /// <param name="record">The heap with its diary.</param>
    /// <param name="check">Whether its diary is as it was written.</param>
    /// <param name="now">The present.</param>
    /// <param name="measures">The units and number format of its text.</param>
    /// <param name="taught">What it taught, where that was looked at.</param>
    /// <exception cref="InputProblem">What it was built of cannot be read.</exception>
    public static BatchRecord Of(
        HeapRecord record,
        ChainCheck check,
        Instant now,
        Measures measures,
        TaughtHeap? taught = null
    )
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(check);
        return new BatchRecord(record, check, now, measures) { Taught = taught };
    }

    /// <summary>The beds that compost of a heap went to.</summary>
    /// <param name="record">The heap with its diary.</param>
    internal static ImmutableArray<BatchUse> UsesOf(HeapRecord record) =>
        [
            .. record
                .Events.Where(e => e.Deed is SpreadDeed)
                .Select(e => (e.At, Deed: (SpreadDeed)e.Deed))
                .Select(e => new BatchUse(e.At, e.Deed.Bed, e.Deed.Litres)),
        ];

    /// <summary>How far it has come by its diary; null before it is built, or where that cannot be asked.</summary>
    public Answer? Finish()
    {
        try
        {
            return BatchFinish.Of(this, now);
        }
        catch (InputProblem)
        {
            // What was kept long ago may no longer be asked; the record is told without it.
            return null;
        }
    }

    /// <summary>What to mind of what went in, each with the materials it is about.</summary>
    public JsonArray Cautions() =>
        MaterialCautions.Of(Parts.Select(p => p.Ingredient.Material), "legionella_dust");

    /// <summary>The record as PDF.</summary>
    /// <param name="paper">The paper.</param>
    public byte[] Pdf(PaperSize paper) =>
        BatchRecordPdf.Render(this, paper, now.InZone(record.Kept.TimeZone()).ToDateTimeOffset());

    /// <summary>The record in JSON and in text.</summary>
    public Answer Answer()
    {
        var finish = Finish();
        var diary = DiaryAnswers.Show(record, now, Measures).Json;
        var json = new JsonObject
        {
            ["schema"] = Json.Schema,
            ["heap"] = diary["heap"]!.DeepClone(),
            ["materials"] = new JsonArray([.. Parts.Select(Part)]),
            ["water_l"] = WaterLitres,
            ["carbon_nitrogen_ratio"] = Json.Of(Mixture.Quantity(s => s.CarbonNitrogenRatio)),
            ["moisture_pct_wb"] = Json.Of(Mixture.Quantity(s => s.Moisture)),
            ["filled_volume_l"] = Json.Of(Mixture.Quantity(s => s.FilledVolume)),
            ["entries"] = diary["entries"]!.DeepClone(),
            ["struck_out"] = diary["struck_out"]!.DeepClone(),
            ["readings"] = Readings.Length,
            ["hottest_c"] = Readings.IsEmpty
                ? null
                : Readings.Max(r => r.Temperature.DegreesCelsius),
            ["heat"] = Heat?.Answer.Json.DeepClone(),
            ["finish"] = finish?.Json,
            ["used"] = new JsonArray([.. Uses.Select(u => u.ToJson())]),
            ["taught"] = Taught?.Short(),
            ["diary_whole"] = check.IsWhole,
            ["diary_sha256"] = check.Head,
            ["cautions"] = Cautions(),
        };
        return new Answer(json, Yes: true, BatchText.Of(this, finish));
    }

    private static JsonObject Part(BatchPart part) =>
        new()
        {
            ["name"] = part.Ingredient.Name,
            ["material"] = part.Ingredient.Material?.Id,
            ["amount"] = new JsonObject
            {
                ["value"] = Json.Plain(part.Ingredient.Amount),
                ["unit"] = part.Ingredient.Unit.Unit,
            },
            ["volume_l"] = part.LooseLitres,
            ["mass_kg"] = part.Kilograms,
            ["giver"] = part.Load is { Giver.Length: > 0 } load ? load.Giver : null,
            ["since"] = EntryJson.Date(part.Load?.Since),
        };

    // Forked over into another bay all of it is turned; of the upper half alone a rule would not say so.
    private static bool IsTurn(HeapDeed deed) =>
        deed is MovedDeed or TurnedDeed { Part: not TurnedPart.TopHalf };

    // The places where a probe stood are its probes; a place that was not said is one of them.
    private HygieneAnswer? AskHeat(string process)
    {
        var usable = Readings
            .Where(r =>
                r.Temperature.DegreesCelsius
                    is >= HygieneReader.Coldest
                        and <= HygieneReader.Hottest
            )
            .TakeLast(HygieneReader.MostReadings)
            .ToList();
        if (usable.Count == 0)
        {
            return null;
        }

        var question = new JsonObject
        {
            ["process"] = process,
            ["name"] = record.Kept.Name.Length > 80 ? record.Kept.Name[..80] : record.Kept.Name,
            ["readings"] = new JsonArray([
                .. usable.Select(r => new JsonObject
                {
                    ["time"] = EntryJson.Time(r.At),
                    ["probe"] = EntryWords.Of(r.Spot),
                    ["temperature_c"] = r.Temperature.DegreesCelsius,
                }),
            ]),
            ["turns"] = new JsonArray([
                .. record
                    .Events.Where(e => IsTurn(e.Deed))
                    .TakeLast(HygieneReader.MostTurns)
                    .Select(e => (JsonNode)EntryJson.Time(e.At)),
            ]),
        };
        return HygieneAnswers.Answer(
            System.Text.Encoding.UTF8.GetBytes(question.ToJsonString()),
            record.Kept.Name,
            null,
            Measures
        );
    }
}
