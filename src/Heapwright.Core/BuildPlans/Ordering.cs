using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>Finds how many pairs there must be so that no layer is too thick and scraps lie in the middle.</summary>
internal static class Ordering
{
    // Grass that would not make one layer of its own, cm.
    private const double LittleGrass = 1.5;
    private const int MorePairs = 2;
    private const int MoreForScraps = 3;
    private const int MoreForSlopes = 2;
    private const int MostHosts = 4;

    // Where no floor is left inside the margin the scraps take the middle third each way, and a little more.
    private const double NarrowInside = 0.25;

    public static Arrangement Find(Heaping heaping, IReadOnlyList<Stuff> stuffs)
    {
        if (stuffs.Select(s => s.Ingredient.Key).Distinct(StringComparer.Ordinal).Count() == 1)
        {
            return Alone(heaping, stuffs);
        }

        var grass = stuffs.Where(s => s.Class == StuffClass.Grass).ToList();
        if (
            stuffs.Any(s => s.Class == StuffClass.Green)
            && heaping.SlabThickness(grass.Sum(s => s.Litres)) < LittleGrass
        )
        {
            grass.ForEach(s => s.Scatter());
        }

        if (!stuffs.Any(s => s.IsGreen))
        {
            foreach (var stuff in stuffs.Where(IsScatteredGreen))
            {
                stuff.LayAsGreen();
            }
        }

        var hosts = Hosts(heaping, stuffs);
        Arrangement? best = null;
        foreach (var counts in Choices(heaping, stuffs, hosts > 0))
        {
            foreach (var (first, count) in Places(counts.All, hosts))
            {
                var tried = new Laying(heaping, stuffs, counts, first, count).Lay();
                best = best is null || tried.Score < best.Score - 1e-9 ? tried : best;
            }
        }

        return best!;
    }

    private static bool IsScatteredGreen(Stuff stuff) =>
        stuff.Class == StuffClass.Sprinkle && stuff.Ingredient.Material?.CountsAs == "green";

    // Every number of pairs that can be right: from as few as the limits allow to some more.
    private static IEnumerable<PairCounts> Choices(
        Heaping heaping,
        IReadOnlyList<Stuff> stuffs,
        bool scraps
    )
    {
        // Its share of the height: on a floor between walls that is its thickness.
        double Thickness(Func<Stuff, bool> which) =>
            stuffs.Where(which).Sum(s => s.Litres)
            / heaping.Loose
            * heaping.Height.Centimeters
            / heaping.Factor;
        static int Pairs(double thickness, double limit) =>
            Math.Min(LayerLimits.MostPairs, (int)Math.Ceiling(thickness / limit));

        var grass = Pairs(Thickness(s => s.Class == StuffClass.Grass), LayerLimits.Grass);
        var limit = stuffs
            .Where(s => s.Class == StuffClass.Green)
            .Select(s => s.Limit)
            .DefaultIfEmpty(LayerLimits.Other)
            .Min();
        var green = Pairs(Thickness(s => s.Class == StuffClass.Green), limit);
        var more = scraps ? MoreForScraps : MorePairs;
        var leafy = stuffs.Any(s => s.Class == StuffClass.Leaves);
        var browns = Thickness(s => s.IsBrown || s.Class == StuffClass.Structure);
        var pairs = Pairs(browns, leafy ? LayerLimits.Leaves : LayerLimits.Other);
        // More than can be written down: fewer, and thicker than they should be, which the plan says.
        var room =
            LayerLimits.MostPairs
            - (scraps ? 1 : 0)
            - (stuffs.Any(s => s.Class == StuffClass.Soil) ? 1 : 0);
        if (grass + green == 0)
        {
            for (
                var i = Math.Clamp(pairs - 2, 1, room);
                i <= Math.Min(Math.Max(1, pairs) + more, room);
                i++
            )
            {
                yield return new PairCounts(0, 0, i);
            }

            yield break;
        }

        if (grass + green > room)
        {
            grass = Math.Clamp(
                room * grass / (grass + green),
                grass > 0 ? 1 : 0,
                room - (green > 0 ? 1 : 0)
            );
            green = room - grass;
        }

        // A sloped heap narrows upwards, so that the same stuff lies thicker: more pairs.
        more += heaping.HasWalls ? 0 : MoreForSlopes;

        // Where browns are many, it is they that must be parted.
        var most = Math.Max(grass + green + (2 * more), pairs);
        var each = Math.Max(more, pairs - grass - green);
        for (var g = grass; g <= (grass > 0 ? grass + each : 0); g++)
        {
            for (var o = green; o <= (green > 0 ? green + each : 0); o++)
            {
                var counts = new PairCounts(g, o, 0);
                var first = g == grass && o == green;
                var few = counts.All <= Math.Min(most, room);
                if (first || few)
                {
                    yield return counts;
                }
            }
        }
    }

    // Which pairs carry the kitchen scraps: neighbours not far from the middle.
    private static IEnumerable<(int First, int Count)> Places(int pairs, int hosts)
    {
        if (hosts == 0)
        {
            yield return (0, 0);
            yield break;
        }

        for (var count = 1; count <= Math.Min(hosts + 1, pairs); count++)
        {
            var middle = (pairs - count) / 2.0;
            var reach = Math.Max(1.5, pairs / 5.0);
            for (var first = 0; first + count <= pairs; first++)
            {
                if (Math.Abs(first - middle) <= reach)
                {
                    yield return (first, count);
                }
            }
        }
    }

    private static int Hosts(Heaping heaping, IReadOnlyList<Stuff> stuffs)
    {
        var litres = stuffs.Where(s => s.Class == StuffClass.Kitchen).Sum(s => s.Litres);
        if (litres <= 0)
        {
            return 0;
        }

        var inside = heaping
            .Outline(0)
            .ShareInside(heaping.Height / 2, Length.FromCentimeters(LayerLimits.ScrapsMargin));
        var thick = heaping.SlabThickness(litres) / Math.Max(inside, NarrowInside);
        return Math.Clamp((int)Math.Ceiling(thick / LayerLimits.Scraps), 1, MostHosts);
    }

    // One stuff, even if it was listed twice: layers only say how much to fluff and water at a time.
    private static Arrangement Alone(Heaping heaping, IReadOnlyList<Stuff> stuffs)
    {
        var limit = stuffs[0].Class == StuffClass.Soil ? LayerLimits.Other : stuffs[0].Limit;
        var litres = stuffs.Sum(s => s.Litres);
        var fewest = Math.Clamp(
            (int)Math.Ceiling((heaping.SlabThickness(litres) / limit) - 1e-9),
            1,
            LayerLimits.MostLayers
        );
        Arrangement? best = null;
        for (var count = fewest; count <= Math.Min(fewest + 4, LayerLimits.MostLayers); count++)
        {
            var drafts = Alone(heaping, stuffs, count, limit);
            var thickest = heaping
                .Levels(drafts)
                .Max(l => (l.Top - l.Bottom).Centimeters / heaping.Factor / limit);
            if (best is null || thickest < best.Excess - 1e-9)
            {
                best = new Arrangement(drafts, thickest, 0, 0);
            }

            if (best.Excess <= 1 + 1e-9)
            {
                break;
            }
        }

        return best!;
    }

    private static List<Draft> Alone(
        Heaping heaping,
        IReadOnlyList<Stuff> stuffs,
        int count,
        double limit
    )
    {
        var drafts = Enumerable
            .Range(0, count)
            .Select(i => new Draft(LayerRole.Alone, i))
            .ToArray();
        var wanted = Laying.Weights(heaping, 0, 0, count);
        var litres = stuffs.Sum(s => s.Litres);
        for (var i = 0; i < count; i++)
        {
            wanted[i] *= litres;
        }

        foreach (var stuff in stuffs)
        {
            var step = Portions.Step(stuff, stuff.Amount, count, heaping.SlabLitres(limit));
            var parts = Portions.Spread(stuff.Amount, step, stuff.PerUnit.LooseVolume, wanted);
            for (var i = 0; i < count; i++)
            {
                drafts[i].Add(stuff, parts[i]);
            }
        }

        return [.. drafts.Where(d => d.Parts.Count > 0)];
    }
}
