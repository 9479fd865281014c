using System.Globalization;
using Heapwright.App.Changes;

namespace Heapwright.App.Sites;

/// <summary>Recipes and build sheets that are kept.</summary>
/// <param name="recorder">The way to the record.</param>
public sealed class KeepPlans(SiteRecorder recorder)
{
    /// <summary>Keeps a recipe.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Keep(SavedRecipe recipe, CancellationToken cancel) =>
        recorder.Put("acts.recipe_kept", [recipe.Name], [recipe], cancel);

    /// <summary>Keeps a build sheet, with the recipe it was made from.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="recipe">The recipe; null for a sheet made from a mix.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Keep(SavedSheet sheet, SavedRecipe? recipe, CancellationToken cancel) =>
        recorder.Put(
            "acts.sheet_kept",
            [sheet.Name],
            recipe is null ? [sheet] : [recipe, sheet],
            cancel
        );

    /// <summary>Ticks a layer off, or takes the tick back.</summary>
    /// <param name="sheet">Which sheet.</param>
    /// <param name="layer">The number of the layer.</param>
    /// <param name="done">Whether it is done.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Tick(Guid sheet, int layer, bool done, CancellationToken cancel) =>
        recorder.Edit<SavedSheet>(
            sheet,
            old =>
                (
                    old with
                    {
                        Ticked = done
                            ? [.. old.Ticked.Append(layer).Distinct().Order()]
                            : old.Ticked.Remove(layer),
                    },
                    done ? "acts.layer_done" : "acts.layer_open",
                    [old.Name, layer.ToString(CultureInfo.InvariantCulture)]
                ),
            cancel
        );

    /// <summary>Takes a sheet out.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Remove(SavedSheet sheet, CancellationToken cancel) =>
        recorder.Remove("acts.sheet_removed", [sheet.Name], [sheet], cancel);

    /// <summary>Takes a recipe out.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Remove(SavedRecipe recipe, CancellationToken cancel) =>
        recorder.Remove("acts.recipe_removed", [recipe.Name], [recipe], cancel);
}
