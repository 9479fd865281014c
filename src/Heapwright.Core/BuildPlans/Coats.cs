namespace Heapwright.Core.BuildPlans;

/// <summary>Sets the base and the cover apart from the rest.</summary>
internal static class Coats
{
    /// <summary>What of the browns the base may take where nothing is stiff, and the cover at most.</summary>
    private const double BaseShareOfBrowns = 0.25;
    private const double CoverShareOfBrowns = 0.6;
    private const double CoatShareOfHeight = 0.27;

    /// <summary>The coarsest stiff stuff for 10 to 15 cm on the ground; coarse browns where nothing is stiff.</summary>
    /// <param name="heaping">The bin and how the stuff fills it.</param>
    /// <param name="left">What is left of each stuff, in its unit; lowered by what is taken.</param>
    public static Draft Base(Heaping heaping, Dictionary<Stuff, double> left)
    {
        var draft = new Draft(LayerRole.Base, -1);
        var stiff = left
            .Keys.Where(s => s.Class == StuffClass.Structure)
            .OrderByDescending(s => s.IsCoarse)
            .ThenByDescending(s => s.StiffShare)
            .ToList();
        var all = heaping.SlabThickness(stiff.Sum(s => s.Litres)) * heaping.Factor;
        var most = CoatShareOfHeight * heaping.Height.Centimeters;
        var usual = all >= 2 * LayerLimits.CoatLow ? LayerLimits.CoatUsual : LayerLimits.CoatLow;
        var target = heaping.BaseLitres(Math.Min(usual, most));
        if (stiff.Count > 0)
        {
            Take(draft, heaping, stiff, left, target);
            return draft;
        }

        var browns = left
            .Keys.Where(s => s.IsBrown && !s.Scattered)
            .OrderByDescending(s => s.IsCoarse)
            .ThenByDescending(s => s.StiffShare)
            .ToList();
        var share = BaseShareOfBrowns * browns.Sum(s => s.Litres);
        if (browns.Count > 0 && heaping.SlabThickness(share) >= 3)
        {
            Take(draft, heaping, browns, left, Math.Min(target, share));
        }

        return draft;
    }

    /// <summary>Browns for 10 to 15 cm on top: straw or leaves before anything else.</summary>
    /// <param name="heaping">The bin and how the stuff fills it.</param>
    /// <param name="left">What is left of each stuff, in its unit; lowered by what is taken.</param>
    public static Draft Cover(Heaping heaping, Dictionary<Stuff, double> left)
    {
        var draft = new Draft(LayerRole.Cover, -1);
        var browns = left
            .Keys.Where(s => s.IsBrown && !s.Scattered)
            .OrderBy(CoverRank)
            .ThenByDescending(s => s.Litres)
            .ToList();
        var all = browns.Sum(s => left[s] * s.PerUnit.LooseVolume);
        if (all <= 0)
        {
            // Chips shed little heat either; better a coat of them than none.
            browns = [.. left.Keys.Where(s => s.Class == StuffClass.Structure && left[s] > 0)];
            all = browns.Sum(s => left[s] * s.PerUnit.LooseVolume);
        }

        if (all <= 0)
        {
            return draft;
        }

        var most = CoatShareOfHeight * heaping.Height.Centimeters;
        var plenty = heaping.CoverLitres(LayerLimits.CoatUsual) <= all / 3;
        var usual = plenty ? LayerLimits.CoatUsual : LayerLimits.CoatLow;
        var target = heaping.CoverLitres(Math.Min(usual, most));
        Take(draft, heaping, browns, left, Math.Min(target, CoverShareOfBrowns * all));
        return draft;
    }

    private static int CoverRank(Stuff stuff) =>
        stuff.Ingredient.Material?.Group switch
        {
            "straw_hay" => 0,
            "leaves" => 1,
            "paper" => 3,
            _ => 2,
        };

    private static void Take(
        Draft draft,
        Heaping heaping,
        List<Stuff> stuffs,
        Dictionary<Stuff, double> left,
        double target
    )
    {
        var wanted = target;
        foreach (var stuff in stuffs)
        {
            var available = left[stuff];
            var litres = stuff.PerUnit.LooseVolume;
            if (available <= 0 || wanted < 0.1 * target)
            {
                continue;
            }

            var step = Portions.FineStep(stuff, available, heaping.SlabLitres(LayerLimits.Other));
            if ((double)step * litres > wanted * 1.5)
            {
                continue;
            }

            var amount = Portions.Coat(wanted / litres, available, step);
            draft.Add(stuff, amount);
            left[stuff] = available - amount;
            wanted -= amount * litres;
        }
    }
}
