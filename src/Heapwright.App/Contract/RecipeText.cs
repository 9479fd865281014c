using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Reasons;
using Heapwright.Core.Recipes;
using UnitsNet;

namespace Heapwright.App.Contract;

/// <summary>The answer to <c>recipe</c> in words.</summary>
internal static class RecipeText
{
    public static string Of(
        RecipeQuestion question,
        RecipeAnswer answer,
        Assumptions assumptions,
        JsonArray cautions
    )
    {
        var measures = assumptions.Measures;
        var text = new StringBuilder();
        text.AppendLine(
            Words.Of(
                answer.Status switch
                {
                    RecipeStatus.Ok => "recipes.status_ok",
                    RecipeStatus.FallsShort => "recipes.status_falls_short",
                    _ => "recipes.status_cannot",
                }
            )
        );
        for (var i = 0; i < answer.Plans.Length; i++)
        {
            Append(text, answer.Plans[i], i + 1, measures);
        }

        foreach (var shortfall in answer.Shortfalls)
        {
            text.AppendLine()
                .AppendLine(
                    measures.Say(Reason.Of("recipes.short_" + shortfall.What, Missing(shortfall)))
                );
            foreach (var option in shortfall.Options)
            {
                text.Append("  - ").AppendLine(RecipeAnswers.OptionText(option, measures));
            }
        }

        if (answer.MeasureNext.Length > 0)
        {
            var next = answer.MeasureNext[0];
            text.AppendLine()
                .AppendLine(
                    Words.Of(
                        "recipes.measure_next",
                        null,
                        next.Ingredient.Name,
                        Words.Of("recipes.how_" + next.Measure),
                        100 * next.ChanceGain,
                        measures.Say(next.Why)
                    )
                );
        }

        Figures.AppendList(
            text,
            Words.Of("recipes.left_over"),
            [
                .. answer.LeftOver.Select(l =>
                    $"{UnitWords.Amount(l.Amount, l.Item.Ingredient.Unit)} {l.Item.Ingredient.Name}"
                ),
            ]
        );
        Figures.AppendList(text, Words.Of("quantities.assumed"), assumptions.All);
        MaterialCautions.Append(text, cautions);
        return text.ToString();
    }

    private static void Append(StringBuilder text, RecipePlan plan, int number, Measures measures)
    {
        text.AppendLine()
            .AppendLine(Words.Of("recipes.plan", null, number, Words.Of(plan.Notes[0])));
        foreach (var use in plan.Use.Concat(plan.Buy))
        {
            text.Append("  ")
                .Append(UnitWords.Amount(use.Amount, use.Item.Ingredient.Unit).PadRight(18))
                .Append(use.Item.Ingredient.Name);
            text.AppendLine(use.Item.IsPurchase ? "  (" + Words.Of("recipes.to_buy") + ")" : "");
        }

        text.Append("  ")
            .Append(Water(plan, measures).PadRight(18))
            .AppendLine(Words.Of("recipes.water"));
        var mixture = plan.Mixture;
        text.AppendLine(
            Words.Of(
                "recipes.figures",
                null,
                Shown(mixture.Quantity(s => s.CarbonNitrogenRatio)),
                Shown(mixture.Quantity(s => s.AvailableCarbonNitrogenRatio)),
                Shown(mixture.Quantity(s => s.Moisture)),
                Shown(mixture.Quantity(s => s.FreeAirSpaceSettled)),
                mixture.Quantity(s => s.FilledVolume) is { } filled
                    ? measures.VolumeRange(filled)
                    : Words.Of("recipes.unknown"),
                100 * plan.Chance.All
            )
        );
        text.AppendLine(
            Words.Of(
                "recipes.heats_" + RecipeAnswers.HeatsWord(plan.Expect.Heats),
                null,
                plan.Expect.First55Day ?? 0,
                measures.Temperature(Temperature.FromDegreesCelsius(55))
            )
        );
        if (plan.Cost > 0)
        {
            text.AppendLine(Words.Of("recipes.cost", null, plan.Cost));
        }

        foreach (
            var note in plan
                .Notes.Skip(1)
                .Where(n => number == 1 || n.Code.StartsWith("recipes.", StringComparison.Ordinal))
        )
        {
            text.Append("  ").AppendLine(measures.Say(note));
        }
    }

    private static object Missing(Shortfall shortfall) =>
        shortfall.Unit == "kg"
            ? Mass.FromKilograms(shortfall.Missing)
            : Volume.FromLiters(shortfall.Missing);

    private static string Water(RecipePlan plan, Measures measures) =>
        measures.Water(plan.Water) is { Length: > 0 } water
            ? water
            : Words.Of("buildplans.no_water");

    private static string Shown(Core.Quantities.Spread? value) =>
        value is { } known ? Figures.Range(known) : Words.Of("recipes.unknown");
}
