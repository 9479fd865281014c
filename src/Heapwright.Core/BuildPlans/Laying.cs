using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>Lays the stuff once, for given pairs and given places of the kitchen scraps.</summary>
internal sealed class Laying
{
    // A pair gets browns for its nitrogen, and some of them in any case so that greens never lie on greens.
    private const double EvenShareOfBrowns = 0.25;

    // Of the thickness allowed; the rest is for what does not divide evenly.
    private const double HandsRoom = 0.85;

    // Scraps may take most of the browns for their ring, not all.
    private const double RingShareOfBrowns = 0.6;

    private readonly Heaping heaping;
    private readonly IReadOnlyList<Stuff> stuffs;
    private readonly StuffClass?[] kinds;
    private readonly int firstHost;
    private readonly int hosts;
    private readonly Dictionary<Stuff, double> left;
    private readonly Draft[] brown;
    private readonly Draft[] green;

    public Laying(
        Heaping heaping,
        IReadOnlyList<Stuff> stuffs,
        PairCounts counts,
        int firstHost,
        int hosts
    )
    {
        this.heaping = heaping;
        this.stuffs = stuffs;
        this.firstHost = firstHost;
        this.hosts = hosts;
        kinds = counts.Order();
        left = stuffs.ToDictionary(s => s, s => s.Amount);
        brown = new Draft[kinds.Length];
        green = new Draft[kinds.Length];
        for (var i = 0; i < kinds.Length; i++)
        {
            brown[i] = new Draft(IsHost(i) ? LayerRole.Kitchen : LayerRole.Brown, i);
            green[i] = new Draft(LayerRole.Green, i);
        }
    }

    public Arrangement Lay()
    {
        var bottom = Coats.Base(heaping, left);
        var cover = Coats.Cover(heaping, left);
        LayKitchen();
        var weights = RoomBesideScraps(bottom.Litres, cover.Litres);
        LayGreens(StuffClass.Grass, weights);
        LayGreens(StuffClass.Green, weights);
        LaySprinkles(weights);
        LayBrowns(weights, baseIsBrown: bottom.Parts.Any(p => p.Stuff.IsBrown));

        var drafts = new List<Draft> { bottom };
        var soil = LaySoil();
        for (var i = 0; i < kinds.Length; i++)
        {
            if (soil.TryGetValue(i, out var dusting))
            {
                drafts.Add(dusting);
            }

            drafts.Add(brown[i]);
            drafts.Add(green[i]);
        }

        drafts.Add(cover);
        drafts.RemoveAll(d => d.Parts.Count == 0);
        return Judgement.Of(heaping, Joining.Of(heaping, drafts));
    }

    private bool IsHost(int pair) => pair >= firstHost && pair < firstHost + hosts;

    /// <summary>Shares of layers of equal height; in a heap that narrows they hold less and less.</summary>
    /// <returns>Shape [layer], from the ground up; the sum is 1.</returns>
    public static double[] Weights(
        Heaping heaping,
        double baseLitres,
        double coverLitres,
        int layers
    )
    {
        var outline = heaping.Outline(coverLitres);
        var from = outline.LevelOf(Volume.FromLiters(baseLitres * heaping.Factor));
        var step = (outline.CoreHeight - from) / Math.Max(1, layers);
        var weights = new double[layers];
        double sum = 0;
        for (var i = 0; i < layers; i++)
        {
            var slice =
                outline.CoreBelow(from + (step * (i + 1))) - outline.CoreBelow(from + (step * i));
            weights[i] = Math.Max(slice.Liters, 1e-9);
            sum += weights[i];
        }

        return [.. weights.Select(w => w / sum)];
    }

    // Equal heights, less what the scraps and what lies round them take up.
    private double[] RoomBesideScraps(double baseLitres, double coverLitres)
    {
        var weights = Weights(heaping, baseLitres, coverLitres, kinds.Length);
        var room = heaping.Loose - baseLitres - coverLitres;
        for (var i = 0; i < weights.Length; i++)
        {
            var taken = IsHost(i) ? brown[i].MiddleLitres + RingLitres(i) : 0;
            weights[i] = Math.Max(weights[i] - (taken / room), 0.1 * weights[i]);
        }

        var sum = weights.Sum();
        return [.. weights.Select(w => w / sum)];
    }

    private void LayGreens(StuffClass kind, double[] weights)
    {
        var all = stuffs.Where(s => s.Class == kind && left[s] > 0).ToList();
        if (all.Count == 0)
        {
            return;
        }

        var slots = Slots(i => kinds[i] == kind);
        if (slots.Length == 0)
        {
            slots = Slots(_ => true);
        }

        Spread(all, slots, Wanted(slots, weights, all.Sum(LitresLeft)), green);
    }

    private void LayKitchen()
    {
        var all = stuffs.Where(s => s.Class == StuffClass.Kitchen).ToList();
        if (all.Count == 0)
        {
            return;
        }

        var slots = Slots(IsHost);
        var wanted = Wanted(slots, null, all.Sum(LitresLeft));
        Spread(all, slots, wanted, brown, inMiddle: true);
    }

    private void LaySprinkles(double[] weights)
    {
        foreach (var stuff in stuffs.Where(s => s.Class == StuffClass.Sprinkle))
        {
            var slots = Slots(i => green[i].Parts.Count > 0);
            if (slots.Length == 0)
            {
                slots = Slots(_ => true);
            }

            // More where less lies already, so that layers come out even.
            var there = slots.Select(i => green[i].Litres).ToArray();
            var wanted = Wanted(slots, weights, LitresLeft(stuff) + there.Sum());
            for (var i = 0; i < slots.Length; i++)
            {
                wanted[i] -= there[i];
            }

            Spread([stuff], slots, wanted, green);
        }
    }

    // Stiff stuff, and what clumps, goes through every pair; the other browns follow the nitrogen.
    private void LayBrowns(double[] weights, bool baseIsBrown)
    {
        var slots = Slots(_ => true);
        foreach (
            var stuff in stuffs.Where(s =>
                s.Class == StuffClass.Structure || (s.IsBrown && s.Scattered)
            )
        )
        {
            Spread([stuff], slots, Wanted(slots, weights, LitresLeft(stuff)), brown);
        }

        var all = stuffs.Where(s => s.IsBrown && !s.Scattered).ToList();
        var litres = all.Sum(LitresLeft);
        if (litres <= 0)
        {
            return;
        }

        // On a base of browns the first pair has its browns already.
        var shares = BrownShares(weights);
        if (baseIsBrown && shares.Length > 1)
        {
            var others = 1 - shares[0];
            shares[0] = 0;
            shares = [.. shares.Select(s => s / others)];
        }

        var wanted = new double[slots.Length];
        double ring = 0;
        for (var i = 0; i < slots.Length; i++)
        {
            wanted[i] = IsHost(i) ? RingLitres(i) : 0;
            ring += wanted[i];
        }

        var squeeze = ring > 0 ? Math.Min(1, RingShareOfBrowns * litres / ring) : 1;
        var rest = litres - (ring * squeeze);
        for (var i = 0; i < slots.Length; i++)
        {
            wanted[i] = (wanted[i] * squeeze) + (rest * shares[i]);
        }

        LevelOff(wanted, all.Any(s => s.Class == StuffClass.Leaves));
        Spread(all, slots, wanted, brown);
    }

    // What would lie too thick in one pair goes to those with room.
    private void LevelOff(double[] wanted, bool leafy)
    {
        var limit = leafy ? LayerLimits.Leaves : LayerLimits.Other;
        for (var round = 0; round < 4; round++)
        {
            double over = 0;
            double room = 0;
            var most = new double[wanted.Length];
            for (var i = 0; i < wanted.Length; i++)
            {
                most[i] = Math.Max(0, (HandsRoom * heaping.SlabLitres(limit)) - brown[i].Litres);
                over += Math.Max(0, wanted[i] - most[i]);
                room += Math.Max(0, most[i] - wanted[i]);
            }

            if (over <= 0 || room <= 0)
            {
                return;
            }

            var moved = Math.Min(over, room);
            for (var i = 0; i < wanted.Length; i++)
            {
                wanted[i] +=
                    wanted[i] > most[i]
                        ? (most[i] - wanted[i]) * moved / over
                        : (most[i] - wanted[i]) * moved / room;
            }
        }
    }

    private double[] BrownShares(double[] weights)
    {
        var nitrogen = new double[kinds.Length];
        for (var i = 0; i < nitrogen.Length; i++)
        {
            nitrogen[i] = green[i].Parts.Sum(p => p.Amount * p.Stuff.PerUnit.Nitrogen);
        }

        var all = nitrogen.Sum();
        return
        [
            .. weights.Select(
                (w, i) =>
                    all <= 0
                        ? w
                        : (EvenShareOfBrowns * w) + ((1 - EvenShareOfBrowns) * nitrogen[i] / all)
            ),
        ];
    }

    // Litres around the scraps that keep them away from every side at this pair's height.
    private double RingLitres(int pair)
    {
        var share = (pair + 0.5) / kinds.Length;
        var outline = heaping.Outline(0);
        var inside = outline.ShareInside(
            outline.Height * (0.15 + (0.65 * share)),
            Length.FromCentimeters(LayerLimits.ScrapsMargin)
        );
        var scraps = brown[pair].MiddleLitres;
        var there = brown[pair].Litres - scraps;
        return inside <= 0.05
            ? scraps
            : Math.Max(0, (scraps * (1 - inside) / inside * 1.02) - there);
    }

    private Dictionary<int, Draft> LaySoil()
    {
        var all = stuffs.Where(s => s.Class == StuffClass.Soil && left[s] > 0).ToList();
        var dustings = new Dictionary<int, Draft>();
        if (all.Count == 0)
        {
            return dustings;
        }

        var litres = all.Sum(LitresLeft);
        var count = Math.Clamp(
            (int)Math.Ceiling(heaping.SlabThickness(litres) / LayerLimits.Soil),
            1,
            kinds.Length
        );
        var places = Enumerable.Range(0, count).Select(i => i * kinds.Length / count).ToArray();
        var drafts = places.Select(p => new Draft(LayerRole.Soil, p)).ToArray();
        Spread(all, [.. Enumerable.Range(0, count)], Even(count, litres), drafts);
        for (var i = 0; i < count; i++)
        {
            dustings[places[i]] = drafts[i];
        }

        return dustings;
    }

    private void Spread(
        List<Stuff> all,
        int[] slots,
        double[] wanted,
        Draft[] drafts,
        bool inMiddle = false
    )
    {
        foreach (var stuff in all.OrderByDescending(s => s.PerUnit.LooseVolume))
        {
            var amount = left[stuff];
            if (amount <= 0)
            {
                continue;
            }

            var most = heaping.SlabLitres(stuff.Limit);
            var step = Portions.Step(stuff, amount, slots.Length, most);
            var parts = Portions.Spread(amount, step, stuff.PerUnit.LooseVolume, wanted);
            for (var i = 0; i < slots.Length; i++)
            {
                drafts[slots[i]].Add(stuff, parts[i], inMiddle);
            }

            left[stuff] = 0;
        }
    }

    private int[] Slots(Func<int, bool> chosen) =>
        [.. Enumerable.Range(0, kinds.Length).Where(chosen)];

    private double LitresLeft(Stuff stuff) => left[stuff] * stuff.PerUnit.LooseVolume;

    private static double[] Even(int count, double litres) =>
        [.. Enumerable.Repeat(litres / count, count)];

    private static double[] Wanted(int[] slots, double[]? weights, double litres)
    {
        if (weights is null)
        {
            return Even(slots.Length, litres);
        }

        var sum = slots.Sum(s => weights[s]);
        return [.. slots.Select(s => litres * weights[s] / sum)];
    }
}
