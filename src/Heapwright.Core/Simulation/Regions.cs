namespace Heapwright.Core.Simulation;

/// <summary>Parts of a heap that are looked at: the same place on every grid.</summary>
internal static class Regions
{
    private const double CoreRing = 0.5;
    private const double CoreBottom = 0.25;
    private const double CoreTop = 0.78;
    private const double OuterRing = 0.8;

    /// <summary>The zones of the core with their weights, which add up to 1.</summary>
    public static (int Zone, double Weight)[] Core(HeapGrid grid) =>
        Weighted(grid, 0, CoreRing, CoreBottom, CoreTop);

    /// <summary>The zones of the outer skin of the sides.</summary>
    public static (int Zone, double Weight)[] Outer(HeapGrid grid) =>
        Weighted(grid, OuterRing, 1, 0, 1);

    // By the part of each zone that lies in the region.
    private static (int Zone, double Weight)[] Weighted(
        HeapGrid grid,
        double inner,
        double outer,
        double bottom,
        double top
    )
    {
        var zones = new List<(int Zone, double Weight)>();
        for (var zone = 0; zone < grid.Zones; zone++)
        {
            var (layer, ring) = Math.DivRem(zone, grid.Rings);
            var across = Share(grid.RingEdges, ring, inner, outer);
            var up = Share(grid.LayerEdges, layer, bottom, top);
            if (across * up > 1e-9)
            {
                zones.Add((zone, across * up * grid.ZoneVolume(zone)));
            }
        }

        var sum = zones.Sum(z => z.Weight);
        return [.. zones.Select(z => (z.Zone, z.Weight / sum))];
    }

    // The share of a ring or layer that lies in a stretch.
    private static double Share(double[] edges, int i, double from, double to) =>
        Shifting.Overlap(edges[i], edges[i + 1], from, to) / (edges[i + 1] - edges[i]);
}
