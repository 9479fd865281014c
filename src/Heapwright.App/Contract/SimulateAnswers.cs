using System.Text.Json.Nodes;
using Heapwright.App.Texts;
using Heapwright.Core.Simulation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.App.Contract;

/// <summary>Answers <c>simulate</c>: how a heap would go, day by day.</summary>
public static class SimulateAnswers
{
    // From here on work slows and ammonia goes; above the second something is wrong with so hot a heap.
    internal const double Hot = 65;
    internal const double TooHot = 75;
    private const double LargeHeap = 5; // m³: what is larger holds its heat for long and may take fire by itself

    private static readonly (string Name, double Share)[] Shares =
    [
        ("p05", 0.05),
        ("p25", 0.25),
        ("p50", 0.5),
        ("p75", 0.75),
        ("p95", 0.95),
    ];

    /// <summary>Every milestone by its field, and whether it is one that a heap may never reach.</summary>
    private static readonly (
        string Field,
        Func<HeapMilestones, double> Of,
        bool MayFail
    )[] Milestones =
    [
        ("first_49_c_day", m => m.First49Day, true),
        ("first_55_c_day", m => m.First55Day, true),
        ("first_60_c_day", m => m.First60Day, true),
        ("peak_c", m => m.PeakCelsius, false),
        ("peak_day", m => m.PeakDay, false),
        ("days_at_or_above_55_c", m => m.DaysAtOrAbove55, false),
        ("share_held_72h_at_55_pct", m => m.ShareHeldPercent, false),
        ("share_dose_met_pct", m => m.ShareDosedPercent, false),
        ("dry_matter_loss_pct", m => m.DryLossPercent, false),
        ("nitrogen_loss_pct", m => m.NitrogenLossPercent, false),
        ("final_volume_pct", m => m.FinalVolumePercent, false),
    ];

    /// <summary>Answers a question.</summary>
    /// <param name="input">The question.</param>
    /// <param name="limits">How much may be asked.</param>
    /// <param name="seed">The seed where the question names none.</param>
    /// <param name="measures">The measures of its text; metric if null.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static Answer Answer(
        Input input,
        SimulateLimits limits,
        ulong? seed = null,
        Measures? measures = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(limits);
        var assumptions = new Assumptions(measures ?? Measures.Metric);
        var reader = new SimulateReader(limits, assumptions);
        var question = reader.Read(input, seed);
        MixAnswers.SayMixing(question.Mixture, assumptions);
        var heap = HeapSimulation.Run(question, cancellation);
        SayBuilt(heap, assumptions);
        var ranges = Milestones.ToDictionary(
            m => m.Field,
            m => MilestoneRange.Of([.. heap.Milestones.Select(m.Of)]),
            StringComparer.Ordinal
        );
        var json = ToJson(heap, ranges);
        json["containers"] = ContainerReader.Sizes(reader.Ingredients.Select(i => i.Unit));
        json["assumptions"] = assumptions.ToJson();
        var cautions = Cautions(heap, ranges, reader);
        json["cautions"] = cautions;
        return new Answer(json, Yes: true, SimulateText.Of(heap, ranges, assumptions, cautions));
    }

    private static void SayBuilt(SimulationAnswer heap, Assumptions assumptions)
    {
        var measures = assumptions.Measures;
        assumptions.Say(
            "simulate.built_volume",
            measures.Litres(1000 * heap.BuiltVolume),
            measures.Short(UnitsNet.Length.FromMeters(heap.Grid.Height))
        );
        if (heap.Trodden <= 1.0005)
        {
            return;
        }

        assumptions.Say("simulate.trodden", 100 * (heap.Trodden - 1));
        var room = heap.Question.Bin.Volume.CubicMeters;
        if (heap.BuiltVolume > 1.001 * room)
        {
            assumptions.Say(
                "simulate.over_the_bin",
                measures.Litres(1000 * (heap.BuiltVolume - room))
            );
        }
    }

    private static JsonArray Cautions(
        SimulationAnswer heap,
        IReadOnlyDictionary<string, MilestoneRange> ranges,
        SimulateReader reader
    )
    {
        var also = new List<string> { "legionella_dust", "computed_heat" };
        var peak = ranges["peak_c"];
        if (peak.High >= Hot)
        {
            also.Add("hot_heap");
        }

        if (peak.High >= TooHot || (heap.BuiltVolume >= LargeHeap && peak.High >= Hot))
        {
            also.Add("fire_in_heap");
        }

        return MaterialCautions.Of(
            reader.Ingredients.Where(i => i.Amount.High > 0).Select(i => i.Material),
            [.. also]
        );
    }

    private static JsonObject ToJson(
        SimulationAnswer heap,
        IReadOnlyDictionary<string, MilestoneRange> ranges
    )
    {
        var milestones = new JsonObject();
        foreach (var (field, _, mayFail) in Milestones)
        {
            milestones[field] = ranges[field].ToJson(mayFail);
        }

        return new JsonObject
        {
            ["schema"] = Json.Schema,
            ["seed"] = heap.Question.Seed,
            ["members"] = heap.Question.Members,
            ["bin"] = BinReader.ToJson(heap.Question.Bin),
            ["built_volume_m3"] = heap.BuiltVolume,
            ["day"] = new JsonArray([.. heap.Days.Select(d => (JsonNode)d)]),
            ["core_c"] = Series(heap.Core),
            ["mean_c"] = Series(heap.Mean),
            ["outer_c"] = Series(heap.Outer),
            ["moisture_pct_wb"] = Series(heap.Moisture),
            ["oxygen_pct"] = Series(heap.Oxygen),
            ["height_cm"] = Series(heap.Height),
            ["zones"] = ZonesJson.Of(heap),
            ["milestones"] = milestones,
            ["heat"] = new JsonObject
            {
                ["latent_pct"] = Heat(heap, b => b.LatentPercent),
                ["surface_pct"] = Heat(heap, b => b.SurfacePercent),
                ["air_pct"] = Heat(heap, b => b.AirPercent),
            },
            ["balance_error"] = new JsonObject
            {
                ["water_kg"] = Worst(heap, b => b.WaterError),
                ["carbon_kg"] = Worst(heap, b => b.CarbonError),
                ["nitrogen_kg"] = Worst(heap, b => b.NitrogenError),
                ["energy_pct"] = Worst(heap, b => b.EnergyErrorPercent),
            },
        };
    }

    // One member is plain numbers; several are their percentiles at each time.
    private static JsonArray Series(double[][] byTime)
    {
        var array = new JsonArray();
        foreach (var members in byTime)
        {
            if (members.Length == 1)
            {
                array.Add(Json.Of(members[0]));
                continue;
            }

            array.Add((JsonNode)Point(members));
        }

        return array;
    }

    /// <summary>The percentiles of several members at one time.</summary>
    /// <param name="members">Shape [member].</param>
    internal static JsonObject Point(double[] members)
    {
        double[] sorted = [.. members];
        Array.Sort(sorted);
        var point = new JsonObject();
        foreach (var (name, share) in Shares)
        {
            point[name] = Json.Of(Percentiles.At(sorted, share));
        }

        return point;
    }

    private static JsonNode? Heat(SimulationAnswer heap, Func<HeatAndBalance, double> part) =>
        MilestoneRange.Of([.. heap.Books.Select(part)]).ToJson(mayFail: false);

    private static JsonNode? Worst(SimulationAnswer heap, Func<HeatAndBalance, double> error) =>
        Json.Of(heap.Books.Select(error).MaxBy(Math.Abs));
}
