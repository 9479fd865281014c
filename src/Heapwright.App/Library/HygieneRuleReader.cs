using System.Collections.Immutable;
using System.Globalization;
using Heapwright.Core.Hygiene;
using Heapwright.Core.Materials;

namespace Heapwright.App.Library;

/// <summary>Reads the rules on heat, and studies beside them, from data/rules.</summary>
public static class HygieneRuleReader
{
    private static readonly Lazy<ImmutableArray<HygieneRule>> Shipped = new(Read);
    private static readonly Lazy<ImmutableArray<StudyResult>> ShippedStudies = new(ReadStudies);

    private static readonly Dictionary<string, ProcessKind> Processes = new(StringComparer.Ordinal)
    {
        ["windrow"] = ProcessKind.Windrow,
        ["static_aerated"] = ProcessKind.StaticAerated,
        ["in_vessel"] = ProcessKind.InVessel,
        ["bin"] = ProcessKind.Bin,
    };

    /// <summary>The rules, in the order of the file; read once.</summary>
    public static ImmutableArray<HygieneRule> Rules => Shipped.Value;

    /// <summary>The studies, in the order of the file; read once.</summary>
    public static ImmutableArray<StudyResult> Studies => ShippedStudies.Value;

    /// <summary>The words for the kinds of process.</summary>
    public static IReadOnlyCollection<string> ProcessWords => Processes.Keys;

    /// <summary>The codes of the countries that have rules, in the order of the file.</summary>
    public static IEnumerable<string> Countries =>
        Rules.SelectMany(r => r.Countries).Distinct(StringComparer.Ordinal);

    /// <summary>The kind of process of a word.</summary>
    /// <param name="word">One of <see cref="ProcessWords"/>.</param>
    public static ProcessKind Process(string word) => Processes[word];

    /// <summary>The word of a kind of process.</summary>
    /// <param name="process">The kind.</param>
    public static string Word(ProcessKind process) => Processes.First(p => p.Value == process).Key;

    private static ImmutableArray<HygieneRule> Read()
    {
        var steps = DataFiles.Csv("hygiene-steps.csv").ToLookup(Rule, StringComparer.Ordinal);
        var doses = DataFiles.Csv("hygiene-doses.csv").ToLookup(Rule, StringComparer.Ordinal);
        return
        [
            .. DataFiles
                .Csv("hygiene-rules.csv")
                .Select(row => new HygieneRule
                {
                    Id = row["rule"],
                    Title = row["title"],
                    Countries = List(row["countries"]),
                    Processes = [.. List(row["processes"]).Select(Process)],
                    Period = steps[row["rule"]]
                        .Where(s => s["step"] == "period")
                        .Select(Period)
                        .SingleOrDefault(),
                    Spell = steps[row["rule"]]
                        .Where(s => s["step"] == "spell")
                        .Select(s => new HeatSpell(Band(s)!.Value, Number(s["hours"])!.Value))
                        .SingleOrDefault(),
                    Doses = [.. doses[row["rule"]].Select(Dose)],
                    AlsoAsks = List(row["also_asks"]),
                    Source = row["source"],
                    Citation = row["citation"],
                    Kind = EvidenceKinds.Parse(row["kind"]),
                }),
        ];
    }

    private static ImmutableArray<StudyResult> ReadStudies() =>
        [
            .. DataFiles
                .Csv("hygiene-studies.csv")
                .Select(row => new StudyResult(
                    row["study"],
                    row["about"],
                    Band(row),
                    Number(row["to_c"]),
                    Number(row["hours"]),
                    row["disagrees"] == "yes",
                    row["source"],
                    EvidenceKinds.Parse(row["kind"])
                )),
        ];

    private static HeatPeriod Period(CsvRow row) =>
        new()
        {
            Band = Band(row)!.Value with { HighestCelsius = Number(row["highest_c"]) },
            Days = Number(row["days"]),
            Hours = Number(row["hours"]),
            MeanAboveCelsius = Number(row["mean_above_c"]),
            Order = Enum.Parse<DayOrder>(row["order"], ignoreCase: true),
            Turns = (int)(Number(row["turns"]) ?? 0),
            TurnsApartDays = Number(row["turns_apart_days"]) ?? 0,
            TurnsInPeriod = row["turns_when"] != "in_record",
        };

    private static DoseFormula Dose(CsvRow row) =>
        new(
            row["formula"],
            Number(row["solids_from_pct"]) ?? 0,
            Number(row["solids_below_pct"]),
            Number(row["least_minutes"]) ?? 0,
            Number(row["below_minutes"]),
            Number(row["lowest_c"])!.Value,
            Number(row["coefficient_days"])!.Value,
            Number(row["exponent_per_c"])!.Value
        );

    private static HeatBand? Band(CsvRow row) =>
        Number(row["lowest_c"]) is { } lowest
            ? new HeatBand(lowest, MustExceed: row["compare"] == "above")
            : null;

    private static string Rule(CsvRow row) => row["rule"];

    private static ImmutableArray<string> List(string cell) =>
        [.. cell.Split(';', StringSplitOptions.RemoveEmptyEntries)];

    private static double? Number(string cell) =>
        cell.Length == 0
            ? null
            : double.Parse(cell, NumberStyles.Float, CultureInfo.InvariantCulture);
}
