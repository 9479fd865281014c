namespace Heapwright.Core.BuildPlans;

/// <summary>Finds how many pairs there must be so that no layer is too thick and scraps lie in the middle.</summary>
internal static class Ordering
{
    private const int MostTriesForScraps = 5;

    public static Arrangement Find(Heaping heaping, IReadOnlyList<Stuff> stuffs)
    {
        if (stuffs.Select(s => s.Ingredient.Key).Distinct(StringComparer.Ordinal).Count() == 1)
        {
            return Alone(heaping, stuffs);
        }

        if (!stuffs.Any(s => s.IsGreen))
        {
            foreach (var stuff in stuffs.Where(IsScatteredGreen))
            {
                stuff.LayAsGreen();
            }
        }

        var counts = First(heaping, stuffs);
        var best = Arrangement.Of(heaping, stuffs, counts);
        var current = best;
        var forScraps = 0;
        while (current.Fault != ArrangementFault.None && forScraps < MostTriesForScraps)
        {
            forScraps += current.Fault == ArrangementFault.ScrapsOffMiddle ? 1 : 0;
            counts = More(heaping, stuffs, counts, current.Fault);
            if ((2 * counts.All) + 2 > LayerLimits.MostLayers)
            {
                break;
            }

            current = Arrangement.Of(heaping, stuffs, counts);
            best = current.IsBetterThan(best) ? current : best;
        }

        return best;
    }

    private static bool IsScatteredGreen(Stuff stuff) =>
        stuff.Class == StuffClass.Sprinkle && stuff.Ingredient.Material?.CountsAs == "green";

    private static PairCounts First(Heaping heaping, IReadOnlyList<Stuff> stuffs)
    {
        double Thickness(Func<Stuff, bool> which) =>
            heaping.SlabThickness(stuffs.Where(which).Sum(s => s.Litres));
        static int Pairs(double thickness, double limit) =>
            Math.Min(LayerLimits.MostLayers / 2, (int)Math.Ceiling(thickness / limit));

        var grass = Pairs(Thickness(s => s.Class == StuffClass.Grass), LayerLimits.Grass);
        var others = Thickness(s => s.Class == StuffClass.Green);
        var limit = stuffs
            .Where(s => s.Class == StuffClass.Green)
            .Select(s => s.Limit)
            .DefaultIfEmpty(LayerLimits.Other)
            .Min();
        var green = Pairs(others, Math.Min(limit, LayerLimits.OtherAtEase));
        if ((2 * (grass + green)) + 2 > LayerLimits.GladLayers)
        {
            green = Pairs(others, limit);
        }

        var counts = new PairCounts(grass, green, 0);
        if (counts.All == 0)
        {
            var leafy = stuffs.Any(s => s.Class == StuffClass.Leaves);
            var browns = Thickness(s => s.IsBrown || s.Class == StuffClass.Structure);
            var pairs = Pairs(browns, leafy ? LayerLimits.Leaves : LayerLimits.Other);
            counts = new PairCounts(0, 0, Math.Max(1, pairs));
        }

        return counts;
    }

    private static PairCounts More(
        Heaping heaping,
        IReadOnlyList<Stuff> stuffs,
        PairCounts counts,
        ArrangementFault fault
    )
    {
        if (counts.BrownOnly > 0)
        {
            return counts with { BrownOnly = counts.BrownOnly + 1 };
        }

        double Each(StuffClass kind, int pairs) =>
            pairs == 0
                ? 0
                : stuffs.Where(s => s.Class == kind).Sum(s => s.Litres / s.Limit) / pairs;
        var grass =
            fault == ArrangementFault.GrassTooThick
            || (
                fault != ArrangementFault.GreenTooThick
                && Each(StuffClass.Grass, counts.Grass) > Each(StuffClass.Green, counts.Green)
            );
        return grass
            ? counts with
            {
                Grass = counts.Grass + 1,
            }
            : counts with
            {
                Green = counts.Green + 1,
            };
    }

    // One stuff, even if it was listed twice: layers only say how much to fluff and water at a time.
    private static Arrangement Alone(Heaping heaping, IReadOnlyList<Stuff> stuffs)
    {
        var limit = stuffs[0].Class == StuffClass.Soil ? LayerLimits.Other : stuffs[0].Limit;
        var litres = stuffs.Sum(s => s.Litres);
        var count = Math.Clamp(
            (int)Math.Ceiling((heaping.SlabThickness(litres) / limit) - 1e-9),
            1,
            LayerLimits.MostLayers
        );
        var drafts = Enumerable
            .Range(0, count)
            .Select(i => new Draft(LayerRole.Alone, i))
            .ToArray();
        var wanted = Enumerable.Repeat(litres / count, count).ToArray();
        foreach (var stuff in stuffs)
        {
            var step = Portions.Step(stuff, stuff.Amount, count, heaping.SlabLitres(limit));
            var parts = Portions.Spread(stuff.Amount, step, stuff.PerUnit.LooseVolume, wanted);
            for (var i = 0; i < count; i++)
            {
                drafts[i].Add(stuff, parts[i]);
            }
        }

        return new Arrangement(
            [.. drafts.Where(d => d.Parts.Count > 0)],
            ArrangementFault.None,
            1,
            0
        );
    }
}
