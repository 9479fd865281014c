using Heapwright.Core.Bins;
using UnitsNet;

namespace Heapwright.App.Sites;

/// <summary>How high a heap stands in a bay.</summary>
public static class HeapHeight
{
    /// <summary>The height in metres.</summary>
    /// <param name="bay">The bay.</param>
    /// <param name="cubicMetres">The filled volume.</param>
    public static double Of(Bay bay, double cubicMetres)
    {
        ArgumentNullException.ThrowIfNull(bay);
        Length M(double? size) => Length.FromMeters(size ?? 1);
        var bin = bay.Shape switch
        {
            "box" => Bin.Box(M(bay.LengthM), M(bay.WidthM), M(bay.HeightM)),
            "windrow" => Bin.Windrow(M(bay.LengthM), M(bay.WidthM), M(bay.HeightM)),
            "ring" => Bin.Ring(M(bay.DiameterM), M(bay.HeightM)),
            _ => Bin.Cone(M(bay.DiameterM), M(bay.HeightM)),
        };
        return bin.HeightFor(Volume.FromCubicMeters(Math.Max(cubicMetres, 0))).Meters;
    }
}
