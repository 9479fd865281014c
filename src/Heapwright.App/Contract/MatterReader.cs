using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>Reads what was measured of a heap or of compost; a content may be given as the element or as the oxide.</summary>
internal static class MatterReader
{
    /// <summary>The fields of a report.</summary>
    public static readonly string[] Contents =
    [
        "ash_pct_db",
        "organic_matter_pct_db",
        "carbon_pct_db",
        "nitrogen_pct_db",
        "carbon_nitrogen_ratio",
        "phosphorus_pct_db",
        "p2o5_pct_db",
        "potassium_pct_db",
        "k2o_pct_db",
        "moisture_pct_wb",
        "bulk_density_kg_m3",
    ];

    /// <summary>The fields of an amount.</summary>
    public static readonly string[] Amounts =
    [
        "mass_kg",
        "wet_mass_kg",
        "dry_mass_kg",
        "volume_l",
        "volume_m3",
    ];

    /// <summary>Reads it from fields already opened, what they say before what was known.</summary>
    /// <param name="fields">The fields; some may not be known where they stand.</param>
    /// <param name="known">What was known before.</param>
    /// <exception cref="InputProblem">One thing is given twice, or out of range.</exception>
    public static MatterGiven Read(InputFields fields, MatterGiven known)
    {
        One(fields, "mass_kg", "wet_mass_kg");
        One(fields, "volume_l", "volume_m3");
        One(fields, "ash_pct_db", "organic_matter_pct_db");
        One(fields, "phosphorus_pct_db", "p2o5_pct_db");
        One(fields, "potassium_pct_db", "k2o_pct_db");
        var given = known with
        {
            WetMass =
                (fields["mass_kg"] ?? fields["wet_mass_kg"])?.Spread(0.001, 1e8) ?? known.WetMass,
            DryMass = fields["dry_mass_kg"]?.Spread(0.001, 1e8) ?? known.DryMass,
            Volume =
                fields["volume_l"]?.Spread(0.01, 1e9)
                ?? fields["volume_m3"]?.Spread(1e-5, 1e6).Times(1000)
                ?? known.Volume,
            Moisture = fields["moisture_pct_wb"]?.Spread(0, 99) ?? known.Moisture,
            BulkDensity = fields["bulk_density_kg_m3"]?.Spread(10, 2500) ?? known.BulkDensity,
            Ash =
                fields["ash_pct_db"]?.Spread(0.1, 99.9)
                ?? Rest(fields["organic_matter_pct_db"]?.Spread(0.1, 99.9))
                ?? known.Ash,
            Carbon = fields["carbon_pct_db"]?.Spread(0.1, 99) ?? known.Carbon,
            Nitrogen = fields["nitrogen_pct_db"]?.Spread(0.01, 20) ?? known.Nitrogen,
            Ratio = fields["carbon_nitrogen_ratio"]?.Spread(0.5, 1000) ?? known.Ratio,
            Phosphorus =
                fields["phosphorus_pct_db"]?.Spread(0, 20)
                ?? fields["p2o5_pct_db"]?.Spread(0, 45).Times(Oxides.PhosphorusInP2O5)
                ?? known.Phosphorus,
            Potassium =
                fields["potassium_pct_db"]?.Spread(0, 40)
                ?? fields["k2o_pct_db"]?.Spread(0, 45).Times(Oxides.PotassiumInK2O)
                ?? known.Potassium,
        };
        if (given is { WetMass: { } wet, DryMass: { } dry } && dry.Typical > wet.Typical)
        {
            throw (fields["dry_mass_kg"] ?? fields.Owner).Problem(
                FormattableString.Invariant(
                    $"{dry.Typical} kg of dry matter is more than the {wet.Typical} kg as it lies; at most that much is allowed"
                )
            );
        }

        return given;
    }

    /// <summary>Refuses two fields that say one thing.</summary>
    /// <param name="fields">The fields.</param>
    /// <param name="one">One of them.</param>
    /// <param name="other">The other.</param>
    /// <exception cref="InputProblem">Both are there.</exception>
    public static void One(InputFields fields, string one, string other)
    {
        if (fields[one] is not null && fields[other] is { } twice)
        {
            throw twice.Problem($"\"{one}\" and \"{other}\" say one thing; write one of them");
        }
    }

    private static Spread? Rest(Spread? organic) =>
        organic is { } o ? Spread.Of(100 - o.High, 100 - o.Typical, 100 - o.Low) : null;
}
