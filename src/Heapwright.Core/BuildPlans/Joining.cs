namespace Heapwright.Core.BuildPlans;

/// <summary>
/// Makes one layer of two where one is too thin to be laid, or where there are too many: browns and greens of a pair
/// are forked together anyhow, so they can be laid at once. Kitchen scraps, base and cover stay as they are.
/// </summary>
internal static class Joining
{
    /// <summary>The layers, joined as far as the limits of thickness allow.</summary>
    /// <param name="heaping">The bin and how the stuff fills it.</param>
    /// <param name="drafts">The layers from the ground up, none empty.</param>
    public static List<Draft> Of(Heaping heaping, IReadOnlyList<Draft> drafts)
    {
        var layers = new List<Draft>(drafts);
        JoinThin(heaping, layers);
        JoinMany(heaping, layers);
        return layers;
    }

    /// <summary>How thick a layer is against what it may be: above 1 it is too thick.</summary>
    /// <param name="draft">The layer.</param>
    /// <param name="floor">The floor on which it is laid, m².</param>
    public static double Fullness(Draft draft, double floor)
    {
        if (draft.Role is LayerRole.Base or LayerRole.Cover or LayerRole.Soil)
        {
            return 0;
        }

        if (draft.Role != LayerRole.Pair)
        {
            var strictest = draft
                .Parts.Where(p => p.Stuff.Class != StuffClass.Sprinkle)
                .Select(p => p.Stuff.Limit)
                .DefaultIfEmpty(LayerLimits.Other)
                .Min();
            return draft.Litres / floor / 10 / strictest;
        }

        // Forked together nothing lies by itself: each stuff is held to its own limit, and all to that of any layer.
        var most = draft.Litres / floor / 10 / LayerLimits.Other;
        foreach (var kind in draft.Parts.GroupBy(p => p.Stuff.Limit))
        {
            var litres = kind.Where(p =>
                    p.Stuff.Class is not (StuffClass.Sprinkle or StuffClass.Soil)
                )
                .Sum(p => p.Amount * p.Stuff.PerUnit.LooseVolume);
            most = Math.Max(most, litres / floor / 10 / kind.Key);
        }

        return most;
    }

    private static void JoinThin(Heaping heaping, List<Draft> layers)
    {
        for (var i = 0; i < layers.Count; i++)
        {
            if (CanJoin(layers[i]) && Thickness(heaping, layers, i) < LayerLimits.Thinnest)
            {
                // Joined it may still be thin: it is looked at again.
                i -= TryJoin(heaping, layers, i) ? 1 : 0;
                i = Math.Max(i, -1);
            }
        }
    }

    private static void JoinMany(Heaping heaping, List<Draft> layers)
    {
        while (layers.Count > LayerLimits.MostLayers)
        {
            var best = -1;
            double least = double.PositiveInfinity;
            for (var i = 0; i + 1 < layers.Count; i++)
            {
                // A dusting of soil goes into what lies on it before a layer grows too thick.
                var soil = layers[i].Role == LayerRole.Soil;
                if (!(CanJoin(layers[i]) || soil) || !CanJoin(layers[i + 1]))
                {
                    continue;
                }

                var (full, fits) = Try(heaping, layers, i);
                // What is forked together anyhow comes first.
                var rank =
                    full
                    + (
                        IsPair(layers[i], layers[i + 1]) ? 0
                        : soil ? 5
                        : 10
                    )
                    // If nothing else helps, a layer too thick is better than one too many; the plan says so.
                    + (fits ? 0 : 100);
                if (rank < least)
                {
                    (best, least) = (i, rank);
                }
            }

            if (best < 0)
            {
                return;
            }

            Join(layers, best);
        }
    }

    // With the other half of its pair, else with a neighbour of its kind, else with any that has room.
    private static bool TryJoin(Heaping heaping, List<Draft> layers, int i)
    {
        var best = -1;
        double least = double.PositiveInfinity;
        foreach (var below in new[] { i - 1, i })
        {
            if (below < 0 || below + 1 >= layers.Count)
            {
                continue;
            }

            var (low, high) = (layers[below], layers[below + 1]);
            if (!CanJoin(low) || !CanJoin(high))
            {
                continue;
            }

            var (full, fits) = Try(heaping, layers, below);
            var rank =
                full
                + (
                    IsPair(low, high) ? 0
                    : low.Role == high.Role ? 10
                    : 20
                );
            if (fits && rank < least)
            {
                (best, least) = (below, rank);
            }
        }

        if (best < 0)
        {
            return false;
        }

        Join(layers, best);
        return true;
    }

    // Where one of the two is too thick already, joining them may not make it worse.
    private static (double Full, bool Fits) Try(Heaping heaping, List<Draft> layers, int below)
    {
        var (low, high) = (layers[below], layers[below + 1]);
        var floor = Floor(heaping, layers, below);
        var full = Fullness(Joined(low, high), floor);
        var most = Math.Max(1, Math.Max(Fullness(low, floor), Fullness(high, floor)));
        return (full, full <= most + 1e-9);
    }

    private static bool CanJoin(Draft draft) =>
        draft.Role is LayerRole.Brown or LayerRole.Green or LayerRole.Pair
        || (draft.Role == LayerRole.Kitchen && draft.MiddleLitres <= 0);

    private static bool IsPair(Draft low, Draft high) =>
        low.Pair == high.Pair && low.Role != LayerRole.Pair && high.Role == LayerRole.Green;

    private static void Join(List<Draft> layers, int below)
    {
        layers[below] = Joined(layers[below], layers[below + 1]);
        layers.RemoveAt(below + 1);
    }

    private static Draft Joined(Draft low, Draft high)
    {
        var same = low.Role == high.Role && low.Role != LayerRole.Kitchen;
        var joined = new Draft(same ? low.Role : LayerRole.Pair, low.Pair);
        foreach (var (stuff, amount, inMiddle) in low.Parts.Concat(high.Parts))
        {
            joined.Add(stuff, amount, inMiddle);
        }

        return joined;
    }

    private static double Thickness(Heaping heaping, List<Draft> layers, int i)
    {
        var (bottom, top) = heaping.Levels(layers)[i];
        return (top - bottom).Centimeters;
    }

    private static double Floor(Heaping heaping, List<Draft> layers, int i) =>
        heaping
            .Outline(Heaping.CoverOf(layers))
            .CoreFloorAt(heaping.Levels(layers)[i].Bottom)
            .SquareMeters;
}
