using System.Diagnostics.CodeAnalysis;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>Draws what was measured of the compost, and what is usual where nothing was.</summary>
internal sealed class EndDraw
{
    private readonly FinishTables tables;
    private readonly SamplePoints points;

    public EndDraw(MatterGiven end, FinishTables tables, SamplePoints points)
    {
        this.tables = tables;
        this.points = points;
        Ash = Percent("ash", end.Ash);
    }

    /// <summary>Ash, % of dry mass; null where it was not measured.</summary>
    public Sampled? Ash { get; }

    public Sampled? Percent(string name, Spread? value) => Draw(name, value, SpreadScale.Percent);

    public Sampled? Amount(string name, Spread? value) => Draw(name, value, SpreadScale.Positive);

    public Sampled Percent(string name, Spread? value, string usual) =>
        Percent(name, value) ?? Usual(usual, SpreadScale.Percent);

    public Sampled Positive(string name, Spread? value, string usual) =>
        Amount(name, value) ?? Usual(usual);

    public Sampled Usual(string figure, SpreadScale scale = SpreadScale.Positive) =>
        new(points.Draw("usual " + figure, tables[figure], scale), Origin.Usual);

    public Sampled? Simulated(string name, Spread? value, SpreadScale scale) =>
        value is { } v ? new(points.Draw("simulated " + name, v, scale), Origin.Simulated) : null;

    [return: NotNullIfNotNull(nameof(value))]
    private Sampled? Draw(string name, Spread? value, SpreadScale scale) =>
        value is { } v ? new(points.Draw("end " + name, v, scale), Origin.Measured) : null;
}
