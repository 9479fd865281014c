using System.Text;
using Heapwright.App.Texts;
using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>The answer to <c>finish</c> in words.</summary>
internal static class FinishText
{
    public static string Of(FinishTold told, FinishWords words)
    {
        var (answer, measures) = (told.Answer, told.Assumptions.Measures);
        var text = new StringBuilder();
        text.AppendLine(Head(told, words));
        AddStage(text, answer, words);
        text.AppendLine().AppendLine(words.Say("heading_uses"));
        foreach (var use in answer.Uses)
        {
            AddUse(text, use, told, words);
        }

        AddClasses(text, answer, words);
        Figures.AppendList(text, words.Say("heading_yield"), [.. Yield(told, words, measures)]);
        Figures.AppendList(
            text,
            words.Say("heading_nutrients"),
            [.. Nutrients(told, words, measures)]
        );
        Figures.AppendList(text, words.Say("heading_apply"), [.. Apply(told, words, measures)]);
        Figures.AppendList(text, words.Say("heading_notes"), told.Notes);
        Figures.AppendList(
            text,
            words.Say("heading_missing"),
            [.. told.Missing.Select(m => m.Text)]
        );
        Figures.AppendList(text, Words.Of("quantities.assumed"), told.Assumptions.All);
        MaterialCautions.Append(text, told.Cautions);
        return text.ToString();
    }

    /// <summary>The first sentence: how far it has come, and until when to wait.</summary>
    public static string Head(FinishTold told, FinishWords words)
    {
        var answer = told.Answer;
        var stage =
            answer.Stage.Stage is { } s
                ? words.Say("head_stage", words.Stage(s), 100 * answer.Stage.Chances[(int)s])
            : answer.Stage.Clues.IsEmpty ? words.Say("head_nothing")
            : words.Say("head_unsure");
        return told.Last is { } last
            ? stage + " " + words.Say("head_wait", words.Use(last.Use), When(last, told, words))
            : stage;
    }

    /// <summary>When a use opens: a date, or days from now.</summary>
    public static string When(UseFinding use, FinishTold told, FinishWords words)
    {
        var days = use.WaitDays!.Value;
        return told.Reader.Dates.After(days.Typical) is { } date
            ? words.Say("when_date", date, days.Low, days.High)
            : words.Say("when_days", days.Typical, days.Low, days.High);
    }

    private static void AddStage(StringBuilder text, FinishAnswer answer, FinishWords words)
    {
        if (answer.Stage.Clues.IsEmpty)
        {
            return;
        }

        text.AppendLine(
            string.Join(
                ", ",
                answer.Stage.Chances.Select(
                    (c, i) => words.Say("chance", words.Stage((CompostStage)i), 100 * c)
                )
            )
        );
        foreach (var clue in answer.Stage.Clues)
        {
            text.Append("  - ").AppendLine(words.Clue(clue));
        }

        foreach (var (earlier, later) in answer.Stage.Contradictions)
        {
            text.Append("  ! ").AppendLine(words.Against(earlier, later));
        }
    }

    private static void AddUse(
        StringBuilder text,
        UseFinding use,
        FinishTold told,
        FinishWords words
    )
    {
        text.Append("  ")
            .Append(words.Use(use.Use).PadRight(12))
            .AppendLine(
                words.Say("ready_" + FinishWords.Code(use.Verdict))
                    + (
                        FinishTold.IsAwaited(use)
                            ? " " + words.Say("use_when", When(use, told, words))
                            : ""
                    )
            );
        foreach (var reason in use.Reasons)
        {
            text.Append("      ").AppendLine(words.Because(reason));
        }
    }

    private static void AddClasses(StringBuilder text, FinishAnswer answer, FinishWords words) =>
        Figures.AppendList(
            text,
            words.Say("heading_classes"),
            [
                .. answer.Classes.Select(c =>
                    words.Say(
                        c.IsAtLeast ? "class_line_at_least" : "class_line",
                        words.Scale(c.Scale.Id),
                        words.Value(c),
                        words.Class(c.Scale.Id, c.Class.Name),
                        100 * c.Chances[c.Scale.Classes.IndexOf(c.Class)],
                        words.Source(c.Scale),
                        words.Say("kind_" + EvidenceKinds.Word(c.Scale.Kind))
                    )
                ),
            ]
        );

    private static IEnumerable<string> Yield(FinishTold told, FinishWords words, Measures measures)
    {
        var yield = told.Answer.Yield;
        if (yield.WetMass is { } mass)
        {
            yield return words.Say("line_mass", measures.MassRange(mass.Value));
        }

        if (yield.Volume is { } volume)
        {
            yield return words.Say("line_volume", measures.VolumeRange(volume.Value));
        }

        foreach (
            var (code, value) in ((string, Sampled?)[])
                [
                    ("line_mass_left", yield.MassPercent),
                    ("line_volume_left", yield.VolumePercent),
                    ("line_dry_left", yield.DryShareLeft?.Map(s => 100 * s)),
                    ("line_dry_loss", yield.DryLossPercent),
                    ("line_organic_loss", yield.OrganicLossPercent),
                    ("line_carbon_loss", told.Answer.Nutrients.CarbonLossPercent),
                    ("line_nitrogen_loss", told.Answer.Nutrients.NitrogenLossPercent),
                ]
        )
        {
            if (value is not null)
            {
                yield return words.Say(code, Figures.Range(value.Value, measures.Culture));
            }
        }

        if (yield.Oversize is not null && yield.UsableVolume is { } usable)
        {
            yield return words.Say("line_usable", measures.VolumeRange(usable.Value));
        }

        foreach (var doubt in yield.Doubts)
        {
            yield return measures.Say(doubt);
        }
    }

    private static IEnumerable<string> Nutrients(
        FinishTold told,
        FinishWords words,
        Measures measures
    )
    {
        var n = told.Answer.Nutrients;
        foreach (
            var (code, value) in ((string, Sampled)[])
                [
                    ("line_nitrogen", n.Nitrogen),
                    ("line_phosphorus", n.Phosphorus),
                    ("line_potassium", n.Potassium),
                    ("line_organic", n.OrganicMatter),
                    ("line_ratio", n.Ratio),
                    ("line_first_year", n.FirstYearNitrogenPercent),
                ]
        )
        {
            yield return words.Say(
                code,
                Figures.Range(value.Value, measures.Culture),
                words.Say("from_" + FinishWords.Code(value.From))
            );
        }
    }

    private static IEnumerable<string> Apply(FinishTold told, FinishWords words, Measures measures)
    {
        var barrow = FinishAmounts.Barrow(told);
        foreach (var plan in told.Answer.Beds)
        {
            yield return Bed(plan, barrow, words, measures);
            foreach (var limit in plan.Limits.Where(l => FinishAmounts.Status(l) != "within"))
            {
                yield return words.Say(
                    "limit_" + FinishAmounts.Status(limit),
                    plan.Bed.Name,
                    limit.Figure.Citation
                );
            }

            if (plan.Bed.NitrogenNeed is { } need)
            {
                yield return words.Say(
                    "line_need",
                    plan.Bed.Name,
                    Figures.Range(plan.FirstYearNitrogen.Value, measures.Culture),
                    Figures.Range(need, measures.Culture),
                    100 * plan.ChanceEnough!.Value
                );
            }

            if (plan.PhosphorusYears.Value.Typical >= BedPlan.ManyYears)
            {
                yield return words.Say(
                    "line_phosphorus_years",
                    plan.Bed.Name,
                    Figures.Range(plan.PhosphorusYears.Value, measures.Culture)
                );
            }

            if (plan.HarvestDays is > 0 and var days)
            {
                yield return told.Reader.Dates.After(days) is { } date
                    ? words.Say("line_harvest_date", plan.Bed.Name, days, date)
                    : words.Say("line_harvest", plan.Bed.Name, days);
            }
        }

        if (told.Answer.LeftOver is { } left)
        {
            var typical = left.Value.Typical;
            yield return typical >= 0
                ? words.Say("line_left", measures.Litres(typical))
                : words.Say("line_short", measures.Litres(Math.Abs(typical)));
        }

        foreach (var cover in told.Answer.Covers)
        {
            yield return words.Say(
                "line_covers",
                measures.Short(cover.Centimetres),
                Area(cover.SquareMetres.Value, words, measures)
            );
        }
    }

    private static string Bed(BedPlan plan, Spread? barrow, FinishWords words, Measures measures)
    {
        var barrows = FinishAmounts.Barrows(plan.Litres, barrow);
        return words.Say(
            barrows is null ? "line_bed" : "line_bed_barrows",
            plan.Bed.Name,
            Area(plan.SquareMetres.Value, words, measures),
            Depth(plan.Centimetres.Value, measures),
            measures.VolumeRange(plan.Litres.Value),
            measures.MassRange(plan.Kilograms.Value),
            barrows is null ? "" : Figures.Range(barrows.Value, measures.Culture)
        );
    }

    private static string Depth(Spread centimetres, Measures measures) =>
        measures.LengthRange(centimetres);

    private static string Area(Spread squareMetres, FinishWords words, Measures measures) =>
        words.Say(
            measures.InInches ? "area_ft2" : "area_m2",
            Figures.Range(measures.InArea(squareMetres), measures.Culture)
        );
}
