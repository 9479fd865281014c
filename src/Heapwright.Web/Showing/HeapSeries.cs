using System.Text.Json.Nodes;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Web.Showing;

/// <summary>One quantity of a simulated heap over time, as percentiles over the runs.</summary>
public sealed class HeapSeries
{
    private static readonly string[] Names = ["p05", "p25", "p50", "p75", "p95"];
    private static readonly double[] Shares = [0.05, 0.25, 0.5, 0.75, 0.95];
    private readonly double[][] values;

    private HeapSeries(double[][] values) => this.values = values;

    /// <summary>The number of times.</summary>
    public int Count => values.Length;

    /// <summary>Below which one run in twenty lies, at a time.</summary>
    /// <param name="time">The number of the time.</param>
    public double Low(int time) => values[time][0];

    /// <summary>Below which one run in four lies, at a time.</summary>
    /// <param name="time">The number of the time.</param>
    public double LowerQuarter(int time) => values[time][1];

    /// <summary>The middle run at a time.</summary>
    /// <param name="time">The number of the time.</param>
    public double Middle(int time) => values[time][2];

    /// <summary>Above which one run in four lies, at a time.</summary>
    /// <param name="time">The number of the time.</param>
    public double UpperQuarter(int time) => values[time][3];

    /// <summary>Above which one run in twenty lies, at a time.</summary>
    /// <param name="time">The number of the time.</param>
    public double High(int time) => values[time][4];

    /// <summary>The percentiles of members at each time.</summary>
    /// <param name="members">Shape [time][member].</param>
    public static HeapSeries Of(double[][] members)
    {
        ArgumentNullException.ThrowIfNull(members);
        return new HeapSeries(
            Array.ConvertAll(
                members,
                row =>
                {
                    double[] sorted = [.. row.Order()];
                    return Array.ConvertAll(Shares, s => Percentiles.At(sorted, s));
                }
            )
        );
    }

    /// <summary>A series of an answer; plain numbers stand for all percentiles.</summary>
    /// <param name="json">The list.</param>
    public static HeapSeries Of(JsonNode? json) =>
        new([
            .. (json as JsonArray ?? []).Select(point =>
                point is JsonObject percentiles
                    ? Names.Select(n => percentiles.Number(n) ?? 0).ToArray()
                    : [.. Enumerable.Repeat(point?.GetValue<double>() ?? 0, Names.Length)]
            ),
        ]);
}
