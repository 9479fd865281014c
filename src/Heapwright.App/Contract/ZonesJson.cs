using System.Text.Json.Nodes;
using Heapwright.Core.Bins;
using Heapwright.Core.Forecasts;
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
        var times = WholeDays(heap);
        return Of(
            heap.Grid,
            [.. times.Select(t => heap.Days[t])],
            z => times.Select(t => Median(heap.Zones[t][z]))
        );
    }

    /// <summary>The same of a forecast, with how high it stands.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="days">The days to show.</param>
    public static JsonObject Of(ForecastAnswer forecast, double[] days)
    {
        var inside = Array.ConvertAll(days, forecast.InsideAt);
        var json = Of(forecast.Grid, days, z => inside.Select(i => i.Celsius[z]));
        json["height_cm"] = new JsonArray([.. inside.Select(i => (JsonNode)(100 * i.Height))]);
        return json;
    }

    // The temperatures of a zone at the days.
    private static JsonObject Of(
        HeapGrid grid,
        double[] days,
        Func<int, IEnumerable<double>> celsius
    )
    {
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
            temperatures.Add((JsonNode)new JsonArray([.. celsius(z).Select(t => Json.Of(t))]));
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
            ["day"] = new JsonArray([.. days.Select(d => (JsonNode)d)]),
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
