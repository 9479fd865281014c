using System.Collections.Immutable;
using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Library;

/// <summary>Reads scales, signs, figures and crops for finished compost from data/finish.</summary>
public static class FinishTableReader
{
    private static readonly Lazy<FinishTables> Shipped = new(Read);

    /// <summary>The tables; read once.</summary>
    public static FinishTables Tables => Shipped.Value;

    /// <summary>The word for a use.</summary>
    /// <param name="use">The use.</param>
    public static string Word(CompostUse use) => use.ToString().ToLowerInvariant();

    /// <summary>The words for the uses.</summary>
    public static IReadOnlyList<string> UseWords { get; } =
    [.. Enum.GetValues<CompostUse>().Select(Word)];

    /// <summary>The use of a word.</summary>
    /// <param name="word">One of <see cref="UseWords"/>.</param>
    public static CompostUse Use(string word) => Enum.Parse<CompostUse>(word, ignoreCase: true);

    private static FinishTables Read()
    {
        var classes = DataFiles
            .Csv("finish-classes.csv")
            .ToLookup(r => r["scale"], StringComparer.Ordinal);
        return new FinishTables
        {
            Scales =
            [
                .. DataFiles
                    .Csv("finish-scales.csv")
                    .Select(row => new CompostScale
                    {
                        Id = row["scale"],
                        Quantity = row["quantity"],
                        Classes = [.. classes[row["scale"]].Select(Class)],
                        Mends = row["mends"] == "yes",
                        Error = row.Number("error") ?? 0,
                        ErrorPercent = row.Number("error_pct") ?? 0,
                        EqualityIsPrinted = row["equality"] == "printed",
                        Source = row["source"],
                        Citation = row["citation"],
                        Kind = EvidenceKinds.Parse(row["kind"]),
                    }),
            ],
            Evidence = [.. DataFiles.Csv("finish-evidence.csv").Select(Evidence)],
            Figures = DataFiles
                .Csv("finish-figures.csv")
                .ToImmutableDictionary(
                    row => row["figure"],
                    row => new FinishFigure(
                        row["figure"],
                        Spread(row, "low", "typical", "high"),
                        row["source"],
                        row["citation"],
                        EvidenceKinds.Parse(row["kind"])
                    ),
                    StringComparer.Ordinal
                ),
            Crops = Crops(),
        };
    }

    private static ScaleClass Class(CsvRow row) =>
        new(
            row["class"],
            row.Number("low"),
            row["low_in"] == "yes",
            row.Number("high"),
            row["high_in"] == "yes",
            Limits(row)
        );

    private static EvidenceRow Evidence(CsvRow row) =>
        new()
        {
            Group = row["group"],
            Sign = row["sign"],
            Found = row["class"],
            Likelihood =
            [
                row.Number("active")!.Value,
                row.Number("cooling")!.Value,
                row.Number("curing")!.Value,
                row.Number("mature")!.Value,
            ],
            Weight = row.Number("weight")!.Value,
            Limits = Limits(row),
        };

    private static ImmutableArray<Crop> Crops()
    {
        var needs = DataFiles
            .Csv("finish-needs.csv")
            .ToDictionary(r => r["need"], StringComparer.Ordinal);
        return
        [
            .. DataFiles
                .Csv("finish-crops.csv")
                .Select(row => new Crop
                {
                    Id = row["crop"],
                    Words = row.List("words"),
                    IsFood = row["food"] == "yes",
                    TouchesSoil = row["touches_soil"] == "yes",
                    NitrogenNeed = Spread(
                        needs[row["need"]],
                        "nitrogen_low_g_m2",
                        "nitrogen_typical_g_m2",
                        "nitrogen_high_g_m2"
                    ),
                    Source = needs[row["need"]]["source"],
                    Kind = EvidenceKinds.Parse(needs[row["need"]]["kind"]),
                }),
        ];
    }

    private static UseLimits Limits(CsvRow row) =>
        new([.. row.List("bars").Select(Use)], [.. row.List("cares").Select(Use)]);

    private static Spread Spread(CsvRow row, string low, string typical, string high) =>
        Core.Quantities.Spread.Of(
            row.Number(low)!.Value,
            row.Number(typical)!.Value,
            row.Number(high)!.Value
        );
}
