using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>What was measured: meters and reports, the heap at its start and the compost at its end.</summary>
internal sealed partial class FinishReader
{
    private const double LeastNitrate = 0.01; // mg/kg: less is none, and has no ratio

    /// <summary>What a laboratory, or a person with a meter, measures: the field, and its range.</summary>
    private static readonly (string Field, double Low, double High)[] Meters =
    [
        ("ec_ds_m", 0, 100),
        ("ph", 0, 14),
        ("ammonium_mg_kg", 0, 50_000),
        ("nitrate_mg_kg", 0, 50_000),
        ("ammonium_nitrate_ratio", 0, 10_000),
        ("respiration_mg_co2_c_per_g_om_day", 0, 1000),
        ("respiration_mg_co2_per_g_om_day", 0, 4000),
        ("oxygen_mg_o2_per_kg_om_h", 0, 50_000),
        ("oxygen_mmol_o2_per_kg_om_h", 0, 2000),
        ("germination_pct_of_control", 0, 500),
        ("germination_index", 0, 1000),
    ];

    private static void ReadMeters(
        InputFields top,
        InputFields? lab,
        Dictionary<string, Spread> measured
    )
    {
        foreach (var (field, low, high) in Meters)
        {
            if (top[field] is { } twice && lab?[field] is not null)
            {
                throw twice.Problem("stands in \"lab\" too; write it once");
            }

            if ((lab?[field] ?? top[field])?.Spread(low, high) is { } value)
            {
                measured[field] = value;
            }
        }

        if (
            !measured.ContainsKey("ammonium_nitrate_ratio")
            && measured.TryGetValue("ammonium_mg_kg", out var ammonium)
            && measured.TryGetValue("nitrate_mg_kg", out var nitrate)
            && nitrate.Low >= LeastNitrate
        )
        {
            measured["ammonium_nitrate_ratio"] = Quotient(ammonium, nitrate);
        }

        Convert(
            measured,
            "respiration_mg_co2_c_per_g_om_day",
            "respiration_mg_co2_per_g_om_day",
            Oxides.CarbonDioxidePerCarbon
        );
        Convert(
            measured,
            "oxygen_mmol_o2_per_kg_om_h",
            "oxygen_mg_o2_per_kg_om_h",
            Oxides.MilligramsPerMillimoleOxygen
        );
    }

    // One test in two units: what is missing follows from the other.
    private static void Convert(
        Dictionary<string, Spread> measured,
        string one,
        string other,
        double factor
    )
    {
        if (measured.TryGetValue(one, out var value))
        {
            measured.TryAdd(other, value.Times(factor));
        }
        else if (measured.TryGetValue(other, out value))
        {
            measured[one] = value.Times(1 / factor);
        }
    }

    private static Spread Quotient(Spread top, Spread bottom) =>
        Spread.Of(
            top.Low / bottom.High,
            top.Typical / bottom.Typical,
            top.High / Math.Max(bottom.Low, 1e-6)
        );

    private static (MatterGiven Start, MatterGiven End) Matter(InputFields top, InputFields? lab)
    {
        string[] all = [.. MatterReader.Amounts, .. MatterReader.Contents];
        var (start, end) = (MatterGiven.None, MatterGiven.None);
        if (top["ash"] is { } tracer)
        {
            var fields = tracer.Fields("before_pct_db", "after_pct_db");
            MatterReader.One(top, "ash", "ash_before_pct_db");
            MatterReader.One(top, "ash", "ash_after_pct_db");
            start = start with { Ash = fields["before_pct_db"]?.Spread(0.1, 99.9) };
            end = end with { Ash = fields["after_pct_db"]?.Spread(0.1, 99.9) };
        }

        start = start with { Ash = top["ash_before_pct_db"]?.Spread(0.1, 99.9) ?? start.Ash };
        end = end with
        {
            Ash = top["ash_after_pct_db"]?.Spread(0.1, 99.9) ?? end.Ash,
            Ratio = top["carbon_nitrogen_ratio"]?.Spread(0.5, 1000),
            FirstYearNitrogen = top["first_year_nitrogen_pct"]?.Spread(0, 100),
            Oversize = top["sieve"] is { } sieve ? Oversize(sieve) : null,
        };
        if (top["start"] is { } before)
        {
            var fields = before.Fields(all);
            NotTwice(fields, start.Ash);
            start = MatterReader.Read(fields, start);
        }

        MatterReader.One(top, "end", "compost");
        if ((top["end"] ?? top["compost"]) is { } after)
        {
            var fields = after.Fields(all);
            NotTwice(fields, end.Ash);
            end = MatterReader.Read(fields, end);
        }

        // The tracer's ash and the report's are one sample; the report is believed.
        return (start, lab is null ? end : MatterReader.Read(lab, end));
    }

    private static void NotTwice(InputFields fields, Spread? ash)
    {
        if (
            ash is not null
            && (fields["ash_pct_db"] ?? fields["organic_matter_pct_db"]) is { } twice
        )
        {
            throw twice.Problem("the ash was given already; write it once");
        }
    }

    private static Spread? Oversize(Input input)
    {
        var fields = input.Fields("oversize_pct", "mesh_mm");
        fields["mesh_mm"]?.Number(0.1, 200);
        return fields["oversize_pct"]?.Spread(0, 99);
    }
}
