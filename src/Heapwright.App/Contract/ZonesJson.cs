using System.Text.Json.Nodes;
using Heapwright.Core.Bins;
using Heapwright.Core.Simulation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.App.Contract;

/// <summary>The zones of a simulated heap: where they lie when it is built, and how hot each is day by day.</summary>
internal static class ZonesJson
{
    /// <summary>The field <c>zones</c>.</summary>
    /// <param name="heap">The heap.</param>
    public static JsonObject Of(SimulationAnswer heap)
    {
        var grid = heap.Grid;
        var times = WholeDays(heap);
        var half = grid.Shape == BinShape.Box ? grid.Width / 2 : grid.HalfWidth;
        var zones = new JsonArray();
        var temperatures = new JsonArray();
        for (var z = 0; z < grid.Zones; z++)
        {
            var (layer, ring) = Math.DivRem(z, grid.Rings);
            zones.Add(
                (JsonNode)
                    new JsonObject
                    {
                        ["ring"] = ring,
                        ["layer"] = layer,
                        ["inner_m"] = grid.RingEdges[ring] * half,
                        ["outer_m"] = grid.RingEdges[ring + 1] * half,
                        ["bottom_m"] = grid.LayerEdges[layer] * grid.Height,
                        ["top_m"] = grid.LayerEdges[layer + 1] * grid.Height,
                        ["volume_m3"] = grid.ZoneVolume(z),
                    }
            );
            temperatures.Add(
                (JsonNode)new JsonArray([.. times.Select(t => Json.Of(Median(heap.Zones[t][z])))])
            );
        }

        return new JsonObject
        {
            ["shape"] = BinReader.Word(grid.Shape),
            ["length_m"] = grid.Length,
            ["width_m"] = grid.Width,
            ["height_m"] = grid.Height,
            ["rings"] = grid.Rings,
            ["layers"] = grid.Layers,
            ["ring_edges"] = new JsonArray([.. grid.RingEdges.Select(e => (JsonNode)e)]),
            ["layer_edges"] = new JsonArray([.. grid.LayerEdges.Select(e => (JsonNode)e)]),
            ["ring_centres"] = new JsonArray([.. grid.Centroid.Select(c => (JsonNode)c)]),
            ["zone"] = zones,
            ["day"] = new JsonArray([.. times.Select(t => (JsonNode)heap.Days[t])]),
            ["temperature_c"] = temperatures,
        };
    }

    private static double Median(double[] members)
    {
        double[] sorted = [.. members];
        Array.Sort(sorted);
        return Percentiles.At(sorted, 0.5);
    }

    // Whole days and the last moment; of a day on which something is done, the moment after it.
    private static List<int> WholeDays(SimulationAnswer heap)
    {
        var times = new List<int>();
        for (var t = 0; t < heap.Days.Length; t++)
        {
            var day = heap.Days[t];
            if (t < heap.Days.Length - 1 && (day != Math.Floor(day) || heap.Days[t + 1] <= day))
            {
                continue;
            }

            times.Add(t);
        }

        return times;
    }
}
