using Heapwright.Core.Bins;
using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>The bin and how the stuff fills it: loose litres to heights.</summary>
/// <param name="Bin">The bin.</param>
/// <param name="Loose">Loose litres in all.</param>
/// <param name="Factor">Built volume over loose sum.</param>
internal sealed record Heaping(Bin Bin, double Loose, double Factor)
{
    public bool HasWalls => Bin.Shape is BinShape.Box or BinShape.Ring;

    public double Built => Loose * Factor;

    public Length Height => Bin.HeightFor(Volume.FromLiters(Built));

    /// <summary>Loose litres of a slab of this thickness on the floor (cm, as laid loose).</summary>
    public double SlabLitres(double centimetres) => Bin.Floor.SquareMeters * centimetres * 10;

    /// <summary>How thick loose litres lie on the floor, cm.</summary>
    public double SlabThickness(double litres) => litres / Bin.Floor.SquareMeters / 10;

    /// <summary>Loose litres of a cover that is so thick at the crown (cm, as built).</summary>
    public double CoverLitres(double centimetres)
    {
        var left = Math.Max(0, 1 - (centimetres / Height.Centimeters));
        var core = Bin.Shape switch
        {
            BinShape.Cone => left * left * left,
            BinShape.Windrow => left * left,
            _ => left,
        };
        return Loose * (1 - core);
    }

    /// <summary>Loose litres of the cover of these layers; 0 without one.</summary>
    public static double CoverOf(IReadOnlyList<Draft> drafts) =>
        drafts[^1].Role == LayerRole.Cover ? drafts[^1].Litres : 0;

    /// <summary>Loose litres of a base that is so thick (cm, as built).</summary>
    public double BaseLitres(double centimetres) =>
        Outline(0).CoreBelow(Length.FromCentimeters(centimetres)).Liters / Factor;

    public HeapOutline Outline(double coverLoose) =>
        HeapOutline.Of(
            Bin,
            Volume.FromLiters(Built),
            Volume.FromLiters(Math.Min(Built, coverLoose * Factor))
        );

    /// <summary>Where each layer begins and ends, with the cover last if there is one.</summary>
    public IReadOnlyList<(Length Bottom, Length Top)> Levels(IReadOnlyList<Draft> drafts)
    {
        var outline = Outline(CoverOf(drafts));
        var levels = new List<(Length, Length)>(drafts.Count);
        double below = 0;
        var bottom = Length.Zero;
        foreach (var draft in drafts)
        {
            below += draft.Litres * Factor;
            var last = levels.Count == drafts.Count - 1;
            var top =
                draft.Role == LayerRole.Cover ? outline.Height
                : last ? outline.CoreHeight
                : outline.LevelOf(Volume.FromLiters(below));
            levels.Add((bottom, top));
            bottom = top;
        }

        return levels;
    }
}
