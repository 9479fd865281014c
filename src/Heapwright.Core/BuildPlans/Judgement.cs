using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>Weighs an arrangement: limits first, then the place of the scraps, then ease.</summary>
internal static class Judgement
{
    private const double TooThick = 50;
    private const double ScrapsOff = 40;
    private const double RingShort = 25;
    private const double MarginLess = 8;
    private const double NoRing = 10;
    private const double GreenOnGreen = 6;
    private const double ThinLayer = 4;
    private const double TooMany = 2000;
    private const double AnyLayer = 0.3;

    public static Arrangement Of(Heaping heaping, IReadOnlyList<Draft> drafts)
    {
        var levels = heaping.Levels(drafts);
        var outline = heaping.Outline(Heaping.CoverOf(drafts));
        double score =
            (AnyLayer * drafts.Count)
            + (TooMany * Math.Max(0, drafts.Count - LayerLimits.MostLayers));
        double excess = 0;
        double off = 0;
        for (var i = 0; i < drafts.Count; i++)
        {
            var (bottom, top) = levels[i];
            // As it is laid: on the floor below it, which in a sloped heap is wider than that above.
            var over = Joining.Fullness(drafts[i], outline.CoreFloorAt(bottom).SquareMeters);
            excess = Math.Max(excess, over);
            score +=
                (top - bottom).Centimeters < LayerLimits.Thinnest
                && drafts[i].Role is not (LayerRole.Soil or LayerRole.Kitchen)
                    ? ThinLayer
                    : 0;
            score += over > 1 + 1e-9 ? TooThick * over : 0;
            if (i > 0 && drafts[i].Role == LayerRole.Green && drafts[i - 1].Role == LayerRole.Green)
            {
                score += GreenOnGreen;
            }

            if (drafts[i].MiddleLitres > 0)
            {
                var third = heaping.Height / 3;
                off = Math.Max(off, Math.Max((third - bottom).Meters, (top - (third * 2)).Meters));
                score += drafts[i].Parts.All(p => p.InMiddle) ? NoRing : 0;
                var lacking = Short(drafts[i], outline, (bottom + top) / 2);
                score += (RingShort * lacking) + (lacking > 1e-6 ? MarginLess : 0);
            }
        }

        off = off < 1e-9 ? 0 : off;
        score += off > 0 ? ScrapsOff * (1 + (off / heaping.Height.Meters)) : 0;
        return new Arrangement(drafts, excess, off, score);
    }

    // The share of the scraps for which there is no room away from the sides, 0 to 1.
    private static double Short(Draft draft, HeapOutline outline, Length level)
    {
        var inside = outline.ShareInside(level, Length.FromCentimeters(LayerLimits.ScrapsMargin));
        var share = draft.MiddleLitres / draft.Litres;
        return share <= inside ? 0 : (share - inside) / share;
    }
}
