using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.BuildSheets;
using Heapwright.App.Texts;
using Heapwright.Core.Simulation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.App.Contract;

/// <summary>The answer to <c>simulate</c> in words, with a small chart in letters.</summary>
internal static class SimulateText
{
    private const int ChartWidth = 60;

    private static readonly (string Field, int Celsius)[] Marks =
    [
        ("first_49_c_day", 49),
        ("first_55_c_day", 55),
        ("first_60_c_day", 60),
    ];

    private static readonly string[] Figures =
    [
        "days_at_or_above_55_c",
        "share_held_72h_at_55_pct",
        "share_dose_met_pct",
        "dry_matter_loss_pct",
        "nitrogen_loss_pct",
        "final_volume_pct",
    ];

    public static string Of(
        SimulationAnswer heap,
        IReadOnlyDictionary<string, MilestoneRange> ranges,
        Assumptions assumptions,
        JsonArray cautions
    )
    {
        var measures = assumptions.Measures;
        var text = new StringBuilder();
        text.AppendLine(SheetWords.Bin(heap.Question.Bin, measures));
        text.AppendLine(
            Words.Of(
                heap.Question.Members == 1 ? "simulate.head_one" : "simulate.head",
                null,
                heap.Question.Days,
                heap.Question.Members
            )
        );
        text.AppendLine();
        foreach (var (field, celsius) in Marks)
        {
            text.AppendLine(Reaching(ranges[field], measures.Celsius(celsius)));
        }

        text.AppendLine(
            Words.Of(
                "simulate.peak",
                null,
                InDegrees(ranges["peak_c"], measures),
                Number(ranges["peak_day"])
            )
        );
        foreach (var field in Figures)
        {
            text.AppendLine(
                Words.Of("simulate." + field, null, Number(ranges[field]), measures.Celsius(55))
            );
        }

        Append(text, heap, measures);
        text.AppendLine().AppendLine(Words.Of("simulate.honesty"));
        Contract.Figures.AppendList(text, Words.Of("quantities.assumed"), assumptions.All);
        MaterialCautions.Append(text, cautions);
        return text.ToString();
    }

    /// <summary>Whether and when a temperature is passed, in words.</summary>
    /// <param name="range">The range over members.</param>
    /// <param name="celsius">The temperature in words.</param>
    private static string Reaching(MilestoneRange range, string celsius)
    {
        if (range.IsExact)
        {
            return range.Typical is { } day
                ? Words.Of("simulate.reached", null, celsius, Number(range))
                : Words.Of("simulate.not_reached", null, celsius);
        }

        var share = 100 * range.ShareReaching;
        return range.ShareReaching == 0 ? Words.Of("simulate.reached_by_none", null, celsius)
            : range.Typical is null ? Words.Of("simulate.reached_by_few", null, celsius, share)
            : range.High is null
                ? Words.Of("simulate.reached_by_some", null, celsius, share, range.Typical)
            : Words.Of("simulate.reached", null, celsius, Number(range));
    }

    private static string InDegrees(MilestoneRange range, Measures measures) =>
        range is { Low: { } low, Typical: { } typical, High: { } high }
            ? measures.CelsiusRange(Core.Quantities.Spread.Of(low, typical, high))
            : Words.Of("recipes.unknown");

    private static string Number(MilestoneRange range) =>
        range is { Low: { } low, Typical: { } typical, High: { } high }
            ? Contract.Figures.Range(Core.Quantities.Spread.Of(low, typical, high))
            : Words.Of("recipes.unknown");

    // The core by day: the line of the middle run, and where nine runs in ten lie.
    private static void Append(StringBuilder text, SimulationAnswer heap, Measures measures)
    {
        var columns = (int)Math.Clamp(Math.Round(heap.Question.Days), 2, ChartWidth);
        var low = new double[columns];
        var middle = new double[columns];
        var high = new double[columns];
        for (var c = 0; c < columns; c++)
        {
            var day = heap.Question.Days * c / (columns - 1);
            var at = Array.FindLastIndex([.. heap.Days], d => d <= day + 1e-9);
            double[] sorted = [.. heap.Core[at].Select(measures.InTemperature)];
            Array.Sort(sorted);
            low[c] = Percentiles.At(sorted, 0.05);
            middle[c] = Percentiles.At(sorted, 0.5);
            high[c] = Percentiles.At(sorted, 0.95);
        }

        // Twice as coarse in the smaller degrees, so that the picture keeps its height.
        var step = measures.InFahrenheit ? 10 : 5;
        var top = (int)Math.Ceiling((high.Max() + 1) / step);
        var bottom = (int)Math.Floor(low.Min() / step);
        text.AppendLine().AppendLine(Words.Of("simulate.chart", null, measures.TemperatureUnit));
        for (var row = top; row >= bottom; row--)
        {
            var degrees = row * step;
            var line = new StringBuilder();
            for (var c = 0; c < columns; c++)
            {
                var from = degrees - (step / 2.0);
                var to = degrees + (step / 2.0);
                line.Append(
                    middle[c] >= from && middle[c] < to ? '*'
                    : high[c] >= from && low[c] < to ? ':'
                    : ' '
                );
            }

            text.AppendLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{(degrees % (2 * step) == 0 ? degrees.ToString(CultureInfo.InvariantCulture) : ""), 4} |{line.ToString().TrimEnd()}"
                )
            );
        }

        var end = heap.Question.Days.ToString("0.##", CultureInfo.InvariantCulture);
        text.Append("     +").Append('-', columns).AppendLine();
        text.Append("      0").Append(' ', Math.Max(1, columns - 1 - end.Length)).AppendLine(end);
    }
}
