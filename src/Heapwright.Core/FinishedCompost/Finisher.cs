using System.Collections.Immutable;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>Says what can be said of a heap that may be done, from whatever is known of it.</summary>
public static class Finisher
{
    // From which value on the next word of a row holds; the first holds below the first of them.
    private static readonly ImmutableArray<(string Sign, double[] From, string[] Found)> Steps =
    [
        ("above_air_c", [10, 25], ["under_10", "10_to_25", "over_25"]),
        ("fast_matter_left_pct", [10, 50], ["under_10", "10_to_50", "over_50"]),
        (
            "age_days",
            [14, 28, 60, 120],
            ["under_14", "14_to_28", "28_to_60", "60_to_120", "over_120"]
        ),
        ("cured_days", [7, 21, 60], ["under_7", "7_to_21", "21_to_60", "over_60"]),
    ];

    /// <summary>Answers a question.</summary>
    /// <param name="question">What is known.</param>
    /// <param name="tables">The data it rests on.</param>
    public static FinishAnswer Answer(FinishQuestion question, FinishTables tables)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(tables);
        var points = new SamplePoints(question.Seed);
        var classes = Classes(question, tables, points);
        ImmutableArray<EvidenceRow> signs =
        [
            .. question
                .Signs.Select(s =>
                    tables.Evidence.FirstOrDefault(r => r.Sign == s.Sign && r.Found == s.Word)
                )
                .OfType<EvidenceRow>(),
        ];
        var stepped = Stepped(question, tables);
        var stage = StageJudge.Judge([
            .. classes.Select(f => StageJudge.Clue(f, tables.Evidence)).OfType<StageClue>(),
            .. signs.Concat(stepped).Select(Clue),
        ]);
        var judge = new UseJudge(
            question,
            tables,
            points,
            stage,
            classes,
            [.. signs, .. stepped.Where(r => r.Sign == "above_air_c")]
        );
        var start = StartMatter.Of(question.Start, question.Recipe, points);
        var yield = CompostYield.Of(start, question.End, question.Simulated, tables, points);
        var nutrients = CompostNutrients.Of(start, question.End, yield, tables, points);
        var planner = new BedPlanner(yield, nutrients, tables, points);
        var beds = planner.Plan(question.Beds, question.Manure, question.ShownHot);
        return new FinishAnswer
        {
            Classes = classes,
            Stage = stage,
            Uses = [.. question.Uses.Select(judge.Judge)],
            Yield = yield,
            Nutrients = nutrients,
            Beds = beds,
            WholeBatch = beds.IsEmpty
                ? planner.WholeBatch(question.AskedDepth, question.Manure, question.ShownHot)
                : null,
            Covers = planner.Covers(),
            LeftOver = beds.IsEmpty ? null : planner.LeftOver(beds),
            Pots = question.Pots?.Verdict(PotNeeds(tables)),
            SilentSigns =
            [
                .. question.Signs.Where(s =>
                    !signs.Any(r => r.Sign == s.Sign && r.Found == s.Word)
                ),
            ],
        };
    }

    /// <summary>What a test in pots needs before it may be called clean.</summary>
    /// <param name="tables">The figures.</param>
    public static PotTestNeeds PotNeeds(FinishTables tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        return new PotTestNeeds(
            tables["bean_pots"].Typical,
            tables["bean_test_days"].High,
            tables["bean_leaf_sets"].Typical
        );
    }

    private static ImmutableArray<ScaleFinding> Classes(
        FinishQuestion question,
        FinishTables tables,
        SamplePoints points
    )
    {
        var measured = question.Measured;
        if (question.SelfHeating?.Rise is { } rise)
        {
            measured = measured.SetItem("rise_c", rise);
        }

        if (question.Seeds is { } seeds)
        {
            measured = With(measured, "germination_pct_of_control", seeds.GerminationPercent);
            measured = With(measured, "germination_index", seeds.GerminationIndex);
        }

        var findings = ImmutableArray.CreateBuilder<ScaleFinding>();
        foreach (var scale in tables.Scales)
        {
            if (!measured.TryGetValue(scale.Quantity, out var value))
            {
                continue;
            }

            var counted = scale.Quantity switch
            {
                "germination_pct_of_control" => question.Seeds?.CountedGermination(points),
                "germination_index" => question.Seeds?.CountedIndex(points),
                "rise_c" when question.SelfHeating is { StillRising: true } => Further(
                    value,
                    tables,
                    points
                ),
                _ => null,
            };
            findings.Add(
                scale.Find(value, points, counted) with
                {
                    IsAtLeast =
                        scale.Quantity == "rise_c" && question.SelfHeating is { StillRising: true },
                }
            );
        }

        return findings.ToImmutable();
    }

    // A test that was stopped while it rose says only how far it rose at least.
    private static double[] Further(Spread rise, FinishTables tables, SamplePoints points)
    {
        var cases = points.Draw("value of rise_c", rise, SpreadScale.Positive);
        var further = points.Draw("still_rising_c", tables["still_rising_c"], SpreadScale.Positive);
        return [.. cases.Zip(further, (c, f) => c + f)];
    }

    private static ImmutableSortedDictionary<string, Spread> With(
        ImmutableSortedDictionary<string, Spread> measured,
        string quantity,
        double? value
    ) => value is { } v ? measured.SetItem(quantity, Spread.Exact(v)) : measured;

    private static List<EvidenceRow> Stepped(FinishQuestion question, FinishTables tables)
    {
        var rows = new List<EvidenceRow>();
        foreach (var (sign, from, found) in Steps)
        {
            var value = sign switch
            {
                "above_air_c" => question.AboveAir,
                "fast_matter_left_pct" => question.FastMatterLeft,
                "age_days" => question.AgeDays,
                _ => question.Measured.TryGetValue(sign, out var days) ? days : (Spread?)null,
            };
            if (value is { } v)
            {
                var step = from.Count(f => v.Typical >= f);
                rows.Add(tables.Evidence.Single(r => r.Sign == sign && r.Found == found[step]));
            }
        }

        return rows;
    }

    private static StageClue Clue(EvidenceRow row) =>
        new(row.Group, row.Sign, row.Found, row.Likelihood, row.Weight);
}
