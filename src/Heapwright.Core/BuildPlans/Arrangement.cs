using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>One way to lay the stuff: how many pairs of which green, and the drafts that come of it.</summary>
/// <param name="Drafts">The layers from the ground up, none empty.</param>
/// <param name="Fault">What is too thick or in the wrong place; none if the arrangement is right.</param>
/// <param name="Excess">The thickest layer against its limit; at most 1 if all keep it.</param>
/// <param name="OffMiddle">How far kitchen scraps stick out of the middle third, m.</param>
internal sealed record Arrangement(
    IReadOnlyList<Draft> Drafts,
    ArrangementFault Fault,
    double Excess,
    double OffMiddle
)
{
    /// <summary>Lays base, pairs and cover; the counts say how many pairs carry grass, other greens or no green.</summary>
    public static Arrangement Of(Heaping heaping, IReadOnlyList<Stuff> stuffs, PairCounts counts)
    {
        var kitchen = stuffs.Where(s => s.Class == StuffClass.Kitchen).ToList();
        if (kitchen.Count == 0)
        {
            return new Laying(heaping, stuffs, counts, 0, 0).Lay();
        }

        // Which pairs take the scraps moves every layer above them: each choice is laid and looked at.
        var hosts = Hosts(heaping, kitchen, counts.All);
        Arrangement? best = null;
        for (var first = 0; first + hosts <= counts.All; first++)
        {
            var tried = new Laying(heaping, stuffs, counts, first, hosts).Lay();
            if (best is null || tried.IsBetterThan(best))
            {
                best = tried;
            }
        }

        return best!;
    }

    /// <summary>Whether it keeps the limits better, or as well with the scraps nearer to the middle.</summary>
    public bool IsBetterThan(Arrangement other) =>
        Excess < Math.Max(1, other.Excess) - 1e-9 && other.Excess > 1
        || (Excess <= Math.Max(1, other.Excess) + 1e-9 && OffMiddle < other.OffMiddle - 1e-9);

    private static int Hosts(Heaping heaping, List<Stuff> kitchen, int pairs)
    {
        var inside = heaping
            .Outline(0)
            .ShareInside(heaping.Height / 2, Length.FromCentimeters(LayerLimits.ScrapsMargin));
        var litres = kitchen.Sum(s => s.Litres);
        var thick = heaping.SlabThickness(litres) / Math.Max(inside, 0.1);
        return Math.Clamp((int)Math.Ceiling(thick / LayerLimits.Scraps), 1, Math.Max(1, pairs));
    }
}
