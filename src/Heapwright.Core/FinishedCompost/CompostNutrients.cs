using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>What is in the compost: from a report before the recipe before what is usual.</summary>
public sealed record CompostNutrients
{
    private const double MostNitrogen = 20; // % of dry mass: no compost holds as much
    private const double RichNitrogen = 3; // % of dry mass, from which more becomes available (UC Davis)

    /// <summary>% of dry mass.</summary>
    public required Sampled OrganicMatter { get; init; }

    /// <summary>% of dry mass.</summary>
    public required Sampled Carbon { get; init; }

    /// <summary>% of dry mass.</summary>
    public required Sampled Nitrogen { get; init; }

    /// <summary>P, % of dry mass.</summary>
    public required Sampled Phosphorus { get; init; }

    /// <summary>K, % of dry mass.</summary>
    public required Sampled Potassium { get; init; }

    /// <summary>Carbon over nitrogen.</summary>
    public required Sampled Ratio { get; init; }

    /// <summary>Nitrogen lost, % of that at the start; null where the start is not known.</summary>
    public Sampled? NitrogenLossPercent { get; init; }

    /// <summary>Carbon lost, % of that at the start; null where the start or the loss of dry mass is not known.</summary>
    public Sampled? CarbonLossPercent { get; init; }

    /// <summary>Nitrogen that plants get in the first year, % of all of it.</summary>
    public required Sampled FirstYearNitrogenPercent { get; init; }

    /// <summary>Works out what is in the compost.</summary>
    /// <param name="start">The heap at its start.</param>
    /// <param name="end">What was measured of the compost.</param>
    /// <param name="yield">How much of it there is.</param>
    /// <param name="tables">The figures that are used where nothing was measured.</param>
    /// <param name="points">The sample set of the question.</param>
    public static CompostNutrients Of(
        StartMatter start,
        MatterGiven end,
        CompostYield yield,
        FinishTables tables,
        SamplePoints points
    )
    {
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(end);
        ArgumentNullException.ThrowIfNull(yield);
        ArgumentNullException.ThrowIfNull(tables);
        var draw = new EndDraw(end, tables, points);
        var left = yield.DryShareLeft;
        var organic =
            draw.Ash?.Map(a => 100 - a)
            ?? (
                left is not null && start.Ash is { } before
                    ? before.With(left, (a, l) => 100 - Math.Min(99, a / l), Origin.Recipe)
                    : draw.Usual("organic_matter_pct_db", SpreadScale.Percent)
            );
        var givenRatio = draw.Amount("ratio", end.Ratio);
        var givenCarbon = draw.Percent("carbon", end.Carbon);
        var nitrogen =
            draw.Percent("nitrogen", end.Nitrogen)
            ?? (
                givenRatio is not null && givenCarbon is not null
                    ? givenCarbon.With(givenRatio, (c, r) => c / r)
                    : null
            );
        var loss =
            start.Nitrogen is null ? null
            : nitrogen is null ? draw.Usual("nitrogen_loss_pct")
            : left is null ? null
            : Loss(start.Nitrogen, nitrogen, left);
        nitrogen ??=
            Kept(start.Nitrogen, left, loss?.Map(l => 100 - l)) ?? draw.Usual("nitrogen_pct_db");
        var carbon =
            givenCarbon
            ?? (
                givenRatio is not null && end.Nitrogen is not null
                    ? nitrogen.With(givenRatio, (n, r) => Math.Min(60, n * r))
                    : organic.Map(o => o / 1.8) // Source: Richard, Cornell (printed): % C = % VS / 1.8
            );
        var ratio = givenRatio ?? carbon.With(nitrogen, (c, n) => c / n, Later(carbon, nitrogen));
        return new CompostNutrients
        {
            OrganicMatter = organic,
            Carbon = carbon,
            Nitrogen = nitrogen,
            Phosphorus =
                draw.Percent("phosphorus", end.Phosphorus)
                ?? Kept(start.Phosphorus, left, null)
                ?? draw.Usual("phosphorus_pct_db"),
            Potassium =
                draw.Percent("potassium", end.Potassium)
                ?? Kept(start.Potassium, left, draw.Usual("potassium_kept_pct"))
                ?? draw.Usual("potassium_pct_db"),
            Ratio = ratio,
            NitrogenLossPercent = loss,
            CarbonLossPercent =
                start.Carbon is { } carbonBefore && left is not null
                    // What was not measured must not say that carbon was gained.
                    ? Loss(carbonBefore, carbon, left) is var lost && carbon.From == Origin.Measured
                        ? lost
                        : lost.Map(l => Math.Max(0, l))
                    : yield.OrganicLossPercent,
            FirstYearNitrogenPercent =
                draw.Percent("first year", end.FirstYearNitrogen)
                ?? new Sampled(
                    points.Draw(
                        "usual first_year_nitrogen",
                        FirstYear(tables, nitrogen.Value, ratio),
                        SpreadScale.Percent
                    ),
                    Origin.Usual
                ),
        };
    }

    /// <summary>The range over all sources: from the lowest to the highest figure, the mean of the middles between.</summary>
    /// <param name="tables">The figures.</param>
    /// <param name="nitrogen">Nitrogen, % of dry mass.</param>
    /// <param name="ratio">Carbon over nitrogen.</param>
    /// <remarks>Above 3 % nitrogen the first source says "above 10 %"; a measured C:N above 25 ties nitrogen up.</remarks>
    private static Spread FirstYear(FinishTables tables, Spread nitrogen, Sampled ratio)
    {
        Spread[] all =
        [
            tables["first_year_nitrogen_davis"],
            tables["first_year_nitrogen_guideline"],
            tables["first_year_nitrogen_handout"],
        ];
        var low = nitrogen.Typical > RichNitrogen ? all[0].High : all.Min(s => s.Low);
        if (ratio is { From: Origin.Measured } && ratio.Value.Typical > 25)
        {
            low = 0;
        }

        return Spread.Of(low, all.Average(s => s.Typical), all.Max(s => s.High));
    }

    private static Origin Later(Sampled one, Sampled other) =>
        one.From > other.From ? one.From : other.From;

    private static Sampled? Kept(Sampled? before, Sampled? left, Sampled? keptPercent)
    {
        if (before is null || left is null)
        {
            return null;
        }

        var all = before.With(left, (n, l) => n / l, Origin.Recipe);
        all = keptPercent is null ? all : all.With(keptPercent, (n, k) => n * k / 100);
        return all.Map(n => Math.Min(MostNitrogen, n));
    }

    private static Sampled Loss(Sampled before, Sampled after, Sampled left) =>
        new(
            [
                .. before.Cases.Select(
                    (b, i) => AshTracer.LossPercent(left.Cases[i], b, after.Cases[i])
                ),
            ],
            left.From
        );
}
