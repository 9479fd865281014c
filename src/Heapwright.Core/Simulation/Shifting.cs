using System.Runtime.Intrinsics;

namespace Heapwright.Core.Simulation;

/// <summary>Where matter goes when a heap is turned, watered or layered anew.</summary>
internal static class Shifting
{
    private const double TopShare = 0.6;
    private const double BaseShare = 0.22; // runs past along cracks

    /// <summary>Whether a zone takes part.</summary>
    public static bool IsTurned(HeapGrid grid, TurnedPart part, int zone)
    {
        var layer = zone / grid.Rings;
        return part != TurnedPart.TopHalf
            || (grid.LayerEdges[layer] + grid.LayerEdges[layer + 1]) / 2 > 0.5;
    }

    /// <summary>The share of the matter of each zone that goes to each other one.</summary>
    /// <returns>Shape [to, from]; each column adds up to 1.</returns>
    public static double[,] Turn(HeapGrid grid, Turned turn)
    {
        var zones = Enumerable
            .Range(0, grid.Zones)
            .Where(z => IsTurned(grid, turn.Part, z))
            .ToArray();
        var volume = zones.Sum(grid.ZoneVolume);
        var share = new double[grid.Zones, grid.Zones];
        for (var z = 0; z < grid.Zones; z++)
        {
            share[z, z] = zones.Contains(z) ? 1 - turn.Thoroughness : 1;
        }

        var swapped = turn.Part == TurnedPart.OutsideIn ? Swapped(grid) : null;
        foreach (var from in zones)
        {
            foreach (var to in zones)
            {
                var even = grid.ZoneVolume(to) / volume;
                share[to, from] +=
                    turn.Thoroughness * (swapped is null ? even : (even + swapped[to, from]) / 2);
            }
        }

        return share;
    }

    /// <summary>How poured water divides between layers.</summary>
    public static void WaterByLayer(HeapGrid grid, Span<double> share)
    {
        share.Clear();
        for (var k = 0; k < grid.Layers; k++)
        {
            var (low, high) = (grid.LayerEdges[k], grid.LayerEdges[k + 1]);
            share[k] =
                (TopShare * Overlap(low, high, 0.78, 1) / 0.22)
                + (BaseShare * Overlap(low, high, 0, 0.25) / 0.25)
                + ((1 - TopShare - BaseShare) * Overlap(low, high, 0.25, 0.78) / 0.53);
        }
    }

    /// <summary>Layers drawn anew at their usual shares of each ring's height.</summary>
    /// <returns>Shape [to, from].</returns>
    public static double[,] Relayer(
        HeapGrid grid,
        ReadOnlySpan<Vector512<double>> thickness,
        int lane
    )
    {
        var share = new double[grid.Zones, grid.Zones];
        for (var r = 0; r < grid.Rings; r++)
        {
            var height = 0.0;
            for (var k = 0; k < grid.Layers; k++)
            {
                height += thickness[grid.Zone(r, k)][lane];
            }

            var bottom = 0.0;
            for (var from = 0; from < grid.Layers; from++)
            {
                var tall = thickness[grid.Zone(r, from)][lane];
                for (var to = 0; to < grid.Layers; to++)
                {
                    share[grid.Zone(r, to), grid.Zone(r, from)] =
                        Overlap(
                            bottom,
                            bottom + tall,
                            grid.LayerEdges[to] * height,
                            grid.LayerEdges[to + 1] * height
                        ) / tall;
                }

                bottom += tall;
            }
        }

        return share;
    }

    // The outermost matter goes to the middle and the other way round, place for place by volume.
    private static double[,] Swapped(HeapGrid grid)
    {
        var inward = Enumerable
            .Range(0, grid.Zones)
            .OrderBy(z => Depth(grid, z))
            .ThenBy(z => z)
            .ToArray();
        var share = new double[grid.Zones, grid.Zones];
        var (fromLow, total) = (0.0, grid.Volume);
        foreach (var from in inward)
        {
            var v = grid.ZoneVolume(from);
            var toHigh = total;
            foreach (var to in inward)
            {
                var w = grid.ZoneVolume(to);
                share[to, from] = Overlap(fromLow, fromLow + v, toHigh - w, toHigh) / v;
                toHigh -= w;
            }

            fromLow += v;
        }

        return share;
    }

    private static double Depth(HeapGrid grid, int zone)
    {
        var (layer, ring) = Math.DivRem(zone, grid.Rings);
        var side = (1 - grid.Centroid[ring]) * grid.HalfWidth;
        var middle = (grid.LayerEdges[layer] + grid.LayerEdges[layer + 1]) / 2 * grid.Height;
        return Math.Min(side, Math.Min(grid.Height - middle, middle));
    }

    /// <summary>The length that two stretches share: a to b and c to d.</summary>
    public static double Overlap(double a, double b, double c, double d) =>
        Math.Max(0, Math.Min(b, d) - Math.Max(a, c));
}
