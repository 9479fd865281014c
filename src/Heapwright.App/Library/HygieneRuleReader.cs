using System.Collections.Immutable;
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
                    Countries = row.List("countries"),
                    Processes = [.. row.List("processes").Select(Process)],
                    Period = steps[row["rule"]]
                        .Where(s => s["step"] == "period")
                        .Select(Period)
                        .SingleOrDefault(),
                    Spell = steps[row["rule"]]
                        .Where(s => s["step"] == "spell")
                        .Select(s => new HeatSpell(Band(s)!.Value, s.Number("hours")!.Value))
                        .SingleOrDefault(),
                    Doses = [.. doses[row["rule"]].Select(Dose)],
                    AlsoAsks = row.List("also_asks"),
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
                    row.Number("to_c"),
                    row.Number("hours"),
                    row["disagrees"] == "yes",
                    row["source"],
                    EvidenceKinds.Parse(row["kind"])
                )),
        ];

    private static HeatPeriod Period(CsvRow row) =>
        new()
        {
            Band = Band(row)!.Value with { HighestCelsius = row.Number("highest_c") },
            Days = row.Number("days"),
            Hours = row.Number("hours"),
            MeanAboveCelsius = row.Number("mean_above_c"),
            Order = Enum.Parse<DayOrder>(row["order"], ignoreCase: true),
            Turns = (int)(row.Number("turns") ?? 0),
            TurnsApartDays = row.Number("turns_apart_days") ?? 0,
            TurnsInPeriod = row["turns_when"] != "in_record",
        };

    private static DoseFormula Dose(CsvRow row) =>
        new(
            row["formula"],
            row.Number("solids_from_pct") ?? 0,
            row.Number("solids_below_pct"),
            row.Number("least_minutes") ?? 0,
            row.Number("below_minutes"),
            row.Number("lowest_c")!.Value,
            row.Number("coefficient_days")!.Value,
            row.Number("exponent_per_c")!.Value
        );

    private static HeatBand? Band(CsvRow row) =>
        row.Number("lowest_c") is { } lowest
            ? new HeatBand(lowest, MustExceed: row["compare"] == "above")
            : null;

    private static string Rule(CsvRow row) => row["rule"];
}
