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
        var levels = new List<ConditionSet>();
        foreach (var fill in Fills(question, space))
        {
            foreach (var overlay in Overlays(question))
            {
                levels.Add(overlay with { LeastVolume = fill });
            }
        }

        return levels;
    }

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
            ConditionSet Over(Band? cn, Band? available, Band wet, double free, double stiff) =>
                hard with
                {
                    CarbonNitrogen = ratio ? cn : hard.CarbonNitrogen,
                    AvailableCarbonNitrogen = ratio ? available : null,
                    Moisture = moisture ? wet : hard.Moisture,
                    Air = air ? new Band(free, null, IsCondition: false) : hard.Air,
                    StiffShare = anyHard ? null : stiff,
                };
            Band Aim(double low, double high) => new(low, high, IsCondition: false);
            yield return Over(Aim(25, 35), null, Aim(50, 60), 35, 25);
            yield return Over(null, Aim(15, 21), Aim(50, 65), 35, 25);
            yield return Over(Aim(20, 40), null, Aim(45, 65), 35, 15);
            yield return Over(null, Aim(12, 24), Aim(45, 65), 30, 10);
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

        var room = MostVolume(question) ?? BigEnough;
        var there =
            space.Variables.Where(v => !v.Item.IsPurchase).Sum(v => v.Litres * v.Most)
            * space.Factor;
        yield return 0.85 * room;
        if (0.9 * there < 0.85 * room && there > 0)
        {
            yield return 0.9 * there;
        }

        yield return 0.5 * Math.Min(room, there);
        yield return null;
    }
}
