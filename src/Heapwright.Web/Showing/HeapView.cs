using System.Text.Json.Nodes;

namespace Heapwright.Web.Showing;

/// <summary>A simulated heap as its page shows it: the answer of <c>simulate</c>, its long lists unpacked.</summary>
public sealed class HeapView
{
    private static readonly string[] Lists =
    [
        "day",
        "core_c",
        "mean_c",
        "outer_c",
        "moisture_pct_wb",
        "oxygen_pct",
        "height_cm",
        "zones",
    ];

    private readonly double[][] zoneCelsius;

    private HeapView(JsonObject answer)
    {
        Days = Doubles(answer["day"]);
        Core = HeapSeries.Of(answer["core_c"]);
        Outer = HeapSeries.Of(answer["outer_c"]);
        Moisture = HeapSeries.Of(answer["moisture_pct_wb"]);
        Oxygen = HeapSeries.Of(answer["oxygen_pct"]);
        Height = HeapSeries.Of(answer["height_cm"]);
        var zones = answer["zones"];
        Shape = zones.Text("shape");
        Width = zones.Number("width_m") ?? 1;
        BuiltHeight = zones.Number("height_m") ?? 1;
        RingCentres = Doubles((zones as JsonObject)?["ring_centres"]);
        LayerEdges = Doubles((zones as JsonObject)?["layer_edges"]);
        Frames = Doubles((zones as JsonObject)?["day"]);
        zoneCelsius =
        [
            .. ((zones as JsonObject)?["temperature_c"] as JsonArray ?? []).Select(Doubles),
        ];
        Rest = new JsonObject();
        foreach (var (name, value) in answer)
        {
            if (!Lists.Contains(name, StringComparer.Ordinal))
            {
                Rest[name] = value?.DeepClone();
            }
        }
    }

    /// <summary>The answer without its long lists.</summary>
    public JsonObject Rest { get; }

    /// <summary>Days since building.</summary>
    public double[] Days { get; }

    /// <summary>The middle of the heap, °C.</summary>
    public HeapSeries Core { get; }

    /// <summary>The outermost ring, °C.</summary>
    public HeapSeries Outer { get; }

    /// <summary>Water, % of wet mass.</summary>
    public HeapSeries Moisture { get; }

    /// <summary>Oxygen in the pores of the core, %.</summary>
    public HeapSeries Oxygen { get; }

    /// <summary>Height in the middle, cm.</summary>
    public HeapSeries Height { get; }

    /// <summary>box, ring, cone or windrow.</summary>
    public string Shape { get; }

    /// <summary>Width or diameter, m.</summary>
    public double Width { get; }

    /// <summary>Height when built, m.</summary>
    public double BuiltHeight { get; }

    /// <summary>Centres of the rings as shares of the half width.</summary>
    public double[] RingCentres { get; }

    /// <summary>Where layers end, as shares of the height.</summary>
    public double[] LayerEdges { get; }

    /// <summary>The days of which there is a picture.</summary>
    public double[] Frames { get; }

    /// <summary>The last whole day.</summary>
    public int LastDay => (int)Math.Floor(Days[^1]);

    /// <summary>Takes an answer apart.</summary>
    /// <param name="answer">The answer of <c>simulate</c>.</param>
    public static HeapView Of(JsonObject answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return new HeapView(answer);
    }

    /// <summary>A zone in a picture, °C.</summary>
    /// <param name="ring">The ring, 0 in the middle.</param>
    /// <param name="layer">The layer, 0 on the ground.</param>
    /// <param name="frame">The number of the picture.</param>
    public double Zone(int ring, int layer, int frame) =>
        zoneCelsius[(layer * RingCentres.Length) + ring][frame];

    /// <summary>The number of the time at or just before a day; after what is done on it.</summary>
    /// <param name="day">Days since building.</param>
    public int TimeOf(double day) => Math.Max(0, Array.FindLastIndex(Days, d => d <= day + 1e-9));

    private static double[] Doubles(JsonNode? json) =>
        [.. (json as JsonArray ?? []).Select(v => v?.GetValue<double>() ?? 0)];
}
