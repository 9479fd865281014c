using System.Collections.Immutable;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Reasons;
using UnitsNet;

namespace Heapwright.Core.Recipes;

/// <content>What is said of a plan.</content>
public static partial class RecipePlanner
{
    private static ImmutableArray<Reason> Notes(
        RecipeQuestion question,
        RecipeSpace space,
        Mixture mixture,
        Expectation expect,
        bool proven,
        RecipeAim? aim
    )
    {
        var notes = ImmutableArray.CreateBuilder<Reason>();
        notes.Add(
            Reason.Of(
                aim switch
                {
                    RecipeAim.LeastCost => "recipes.aim_least_cost",
                    RecipeAim.AllThroughHeat => "recipes.aim_all_through_heat",
                    RecipeAim.LeastWork => "recipes.aim_least_work",
                    RecipeAim.UseMost => "recipes.aim_use_most",
                    _ => "recipes.aim_nearest",
                }
            )
        );
        if (!proven && aim is not null)
        {
            notes.Add(Reason.Of("recipes.not_proven"));
        }

        if (
            !space.Exact
            && space.Variables.Any(v => v.Most == 20 && !v.Item.Whole && !v.Item.MustUse)
        )
        {
            notes.Add(Reason.Of("recipes.in_twentieths"));
        }

        var filled = mixture.Typical.FilledVolume;
        if (RecipeLevels.MostVolume(question) is { } most && filled > most * (1 + 1e-9))
        {
            notes.Add(
                Reason.Of("recipes.too_full", Volume.FromLiters(filled), Volume.FromLiters(most))
            );
        }
        else if (filled < 300)
        {
            notes.Add(Reason.Of("recipes.too_small", Volume.FromLiters(filled)));
        }
        else if (question.Bin is { } bin && filled < 0.5 * bin.Volume.Liters)
        {
            notes.Add(Reason.Of("recipes.half_empty", 100 * filled / bin.Volume.Liters));
        }

        if (mixture.Typical.StiffShare < 10)
        {
            notes.Add(Reason.Of("recipes.nothing_stiff"));
        }

        if (expect.AmmoniaLikely)
        {
            notes.Add(Reason.Of("recipes.ammonia"));
        }

        notes.AddRange(RuleOfThumb.Notes(mixture));
        return notes.ToImmutable();
    }
}
