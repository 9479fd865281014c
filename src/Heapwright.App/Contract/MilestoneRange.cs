using System.Text.Json.Nodes;
using Heapwright.Numerics.Sampling;

namespace Heapwright.App.Contract;

/// <summary>
/// A milestone over all members. Members that never reach it count as reaching it later than all others, so the typical
/// value is the day by which half of all have reached it; null where that share never does.
/// </summary>
/// <param name="Low">By when (or at most what) 5 % are there.</param>
/// <param name="Typical">By when half are there.</param>
/// <param name="High">By when 95 % are there.</param>
/// <param name="ShareReaching">The share that reaches it at all, 0 to 1.</param>
/// <param name="IsExact">Whether there was one member only.</param>
internal sealed record MilestoneRange(
    double? Low,
    double? Typical,
    double? High,
    double ShareReaching,
    bool IsExact
)
{
    /// <summary>The range over members; NaN stands for not reached.</summary>
    /// <param name="values">Shape [member].</param>
    public static MilestoneRange Of(double[] values)
    {
        var sorted = new double[values.Length];
        var reached = 0;
        for (var i = 0; i < values.Length; i++)
        {
            var there = double.IsFinite(values[i]);
            reached += there ? 1 : 0;
            sorted[i] = there ? values[i] : double.PositiveInfinity;
        }

        Array.Sort(sorted);
        double? At(double share)
        {
            var value = Percentiles.At(sorted, share);
            return double.IsFinite(value) ? value : null;
        }

        return new MilestoneRange(
            At(0.05),
            At(0.5),
            At(0.95),
            (double)reached / values.Length,
            values.Length == 1
        );
    }

    /// <summary>As the contract has it: a plain number of one member, a range of several.</summary>
    /// <param name="mayFail">Whether it is a mark that may never be reached.</param>
    public JsonNode? ToJson(bool mayFail)
    {
        if (IsExact)
        {
            return Json.Of(Typical);
        }

        var json = new JsonObject
        {
            ["low"] = Json.Of(Low),
            ["typical"] = Json.Of(Typical),
            ["high"] = Json.Of(High),
        };
        if (mayFail)
        {
            json["share_reaching"] = ShareReaching;
        }

        return json;
    }
}
