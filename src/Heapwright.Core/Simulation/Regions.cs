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
        Weighted(
            grid,
            (ring, layer) =>
                grid.RingEdges[ring + 1] <= CoreRing + 1e-9
                && grid.LayerEdges[layer] >= CoreBottom - 1e-9
                && grid.LayerEdges[layer + 1] <= CoreTop + 1e-9
        );

    /// <summary>The zones of the outer skin of the sides.</summary>
    public static (int Zone, double Weight)[] Outer(HeapGrid grid) =>
        Weighted(grid, (ring, _) => grid.RingEdges[ring] >= OuterRing - 1e-9);

    private static (int Zone, double Weight)[] Weighted(HeapGrid grid, Func<int, int, bool> belongs)
    {
        var zones = new List<(int Zone, double Weight)>();
        for (var layer = 0; layer < grid.Layers; layer++)
        {
            for (var ring = 0; ring < grid.Rings; ring++)
            {
                if (belongs(ring, layer))
                {
                    var zone = grid.Zone(ring, layer);
                    zones.Add((zone, grid.ZoneVolume(zone)));
                }
            }
        }

        var sum = zones.Sum(z => z.Weight);
        return [.. zones.Select(z => (z.Zone, z.Weight / sum))];
    }
}
