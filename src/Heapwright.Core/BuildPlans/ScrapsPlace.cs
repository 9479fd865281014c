using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>How far from the sides the kitchen scraps of a plan can be kept.</summary>
internal static class ScrapsPlace
{
    /// <summary>The usual margin, or less where the scraps of a layer need more of the floor; null without scraps.</summary>
    public static Length? MarginOf(PlanFacts facts, IReadOnlyList<BuildLayer> layers)
    {
        Length? least = null;
        var outline = facts.Heaping.Outline(Heaping.CoverOf(facts.Arrangement.Drafts));
        foreach (var layer in layers)
        {
            var scraps = layer.Parts.Where(p => p.InMiddle).Sum(p => p.Loose.Liters);
            if (scraps <= 0)
            {
                continue;
            }

            var share = scraps / layer.Parts.Sum(p => p.Loose.Liters);
            var margin = Margin(outline, (layer.Bottom + layer.Top) / 2, share);
            least = least is null || margin < least ? margin : least;
        }

        return least;
    }

    private static Length Margin(HeapOutline outline, Length level, double share)
    {
        var usual = Length.FromCentimeters(LayerLimits.ScrapsMargin);
        if (outline.ShareInside(level, usual) >= share)
        {
            return usual;
        }

        var low = 0.0;
        var high = LayerLimits.ScrapsMargin;
        for (var i = 0; i < 50; i++)
        {
            var middle = (low + high) / 2;
            if (outline.ShareInside(level, Length.FromCentimeters(middle)) >= share)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return Length.FromCentimeters(low);
    }
}
