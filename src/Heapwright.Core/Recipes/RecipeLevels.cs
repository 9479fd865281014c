namespace Heapwright.Core.Recipes;

/// <summary>
/// The sets of conditions tried one after the other: the asker's conditions always, the usual aims on top as long as
/// they can be kept, and as full a heap as can be.
/// </summary>
internal static class RecipeLevels
{
    /// <summary>A heap smaller than this, litres, has too much skin to stay hot.</summary>
    private const double BigEnough = 800;

    /// <summary>The sets, best first.</summary>
    public static IReadOnlyList<ConditionSet> For(RecipeQuestion question, RecipeSpace space)
    {
        var fills = Fills(question, space).ToArray();
        var overlays = Overlays(question).ToArray();
        IEnumerable<ConditionSet> Over(double? cost) =>
            fills.SelectMany(f =>
                overlays.Select(o => o with { LeastVolume = f, MostCost = cost })
            );
        return SpendsLast(question) ? [.. Over(0), .. Over(null)] : [.. Over(null)];
    }

    /// <summary>
    /// Whether a fine heap from what is there comes before a better one with purchases: where the usual aims advise,
    /// and the asker does not want the hottest heap there can be. With conditions the aim alone decides.
    /// </summary>
    public static bool SpendsLast(RecipeQuestion question) =>
        !question.Bands.AnyCondition
        && question.Aim != RecipeAim.AllThroughHeat
        && question.Items.Any(i => i.IsPurchase && i.Price > 0);

    /// <summary>The asker's conditions alone.</summary>
    public static ConditionSet Conditions(RecipeQuestion question) =>
        new()
        {
            CarbonNitrogen = Condition(question.Bands.CarbonNitrogen),
            Moisture = Condition(question.Bands.Moisture),
            Air = Condition(question.Bands.Air),
            LeastVolume = question.LeastVolume,
            MostVolume = MostVolume(question),
            Chance = question.Chance,
        };

    /// <summary>The most volume allowed: the asker's, or what the bin holds.</summary>
    public static double? MostVolume(RecipeQuestion question) =>
        question.MostVolume ?? question.Bin?.Volume.Liters;

    private static Band? Condition(Band? band) => band is { IsCondition: true } ? band : null;

    private static IEnumerable<ConditionSet> Overlays(RecipeQuestion question)
    {
        var hard = Conditions(question);
        var ratio = question.Bands.CarbonNitrogen is { IsCondition: false };
        var moisture = question.Bands.Moisture is { IsCondition: false };
        var air = question.Bands.Air is { IsCondition: false };
        var anyHard = question.Bands.AnyCondition;
        if (ratio || moisture || air)
        {
            ConditionSet Over(Band? cn, Band? available, Band wet, double free, double? stiff) =>
                hard with
                {
                    CarbonNitrogen = ratio ? cn : hard.CarbonNitrogen,
                    AvailableCarbonNitrogen = ratio ? available : null,
                    Moisture = moisture ? wet : hard.Moisture,
                    Air = air ? new Band(free, null, IsCondition: false) : hard.Air,
                    StiffShare = anyHard ? null : stiff,
                };
            Band Aim(double low, double high) => new(low, high, IsCondition: false);
            var wood = new Band(null, Mixtures.Aims.HighestRatioOfWood, IsCondition: false);
            yield return Over(Aim(25, 35), null, Aim(50, 60), 35, 25);
            yield return Over(wood, Aim(15, 21), Aim(50, 65), 35, 25);
            yield return Over(Aim(20, 40), null, Aim(45, 65), 35, 15);
            yield return Over(wood, Aim(12, 24), Aim(45, 65), 30, 10);
            yield return Over(wood, Aim(12, 24), Aim(45, 65), 30, null);
        }

        if (anyHard || !(ratio || moisture || air))
        {
            yield return hard;
        }
    }

    private static IEnumerable<double?> Fills(RecipeQuestion question, RecipeSpace space)
    {
        if (question.LeastVolume is { } least)
        {
            yield return least;
            yield break;
        }

        // Where all is conditions and volume is none of them, nothing is added to what was asked.
        if (question.Bin is null && question.MostVolume is null && question.Bands.AnyCondition)
        {
            yield return null;
            yield break;
        }

        // What is there comes first; purchases fill the bin only where a bigger heap is wanted or what is there is too
        // small to stay hot.
        var room = MostVolume(question) ?? BigEnough;
        var there =
            space.Variables.Where(v => !v.Item.IsPurchase).Sum(v => v.Litres * v.Most)
            * space.Factor;
        var full = 0.85 * room;
        if (there < 0.75 * BigEnough || question.Aim == RecipeAim.AllThroughHeat)
        {
            yield return full;
        }

        if (there > 0)
        {
            yield return Math.Min(full, 0.9 * there);
        }

        yield return 0.5 * Math.Min(room, there);
        yield return null;
    }
}
