using System.Globalization;
using System.Text;
using Heapwright.App.Library;

namespace Heapwright.Validation.Simulation;

/// <summary>
/// Predicted from the recipe alone against what was published. The table of accepted.csv is the accepted state: a
/// change of the equations or parameters shows what it does to every heap, and is accepted by replacing the file.
/// </summary>
public sealed class PublishedHeapTests(ITestOutputHelper output)
{
    private static readonly Lazy<Row[]> Rows = new(() =>
        [.. PublishedHeaps.All.Select(h => Row.Of(h))]
    );

    private sealed record Row(
        PublishedHeap Published,
        double Peak,
        double First55,
        double FinalRatio,
        double DryLoss,
        double ShareReaching
    )
    {
        public bool Heats => Peak >= 55;

        public static Row Of(PublishedHeap published)
        {
            var run = published.Heap.Run(ParameterReader.Table);
            var m = run.Milestones[0];
            var ensemble = published.Heap.Run(ParameterReader.Table, 64);
            return new Row(
                published,
                m.PeakCelsius,
                m.First55Day,
                run.FinalRatio[0],
                m.DryLossPercent,
                ensemble.Milestones.Average(e => e.PeakCelsius >= 55 ? 1.0 : 0)
            );
        }

        public string Line() =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Published.Heap.Name.Replace(',', ';')},{Published.Source},{Yes(Published.Heats)},{Yes(Heats)},{Published.Peak},{Peak:F1},{Published.First55},{First55:F1},{Published.FinalRatio},{FinalRatio:F1},{Published.DryLoss},{DryLoss:F0},{ShareReaching:F2}"
            );

        private static string Yes(bool? value) =>
            value is null ? ""
            : value.Value ? "yes"
            : "no";
    }

    private static string Table()
    {
        var text = new StringBuilder();
        text.Append(
            "heap,source,heats_published,heats,peak_published_c,peak_c,first_55_published_day,first_55_day,final_ratio_published,final_ratio,dry_loss_published_pct,dry_loss_pct,share_of_members_above_55\n"
        );
        foreach (var row in Rows.Value)
        {
            text.Append(row.Line()).Append('\n');
        }

        return text.ToString();
    }

    [Fact]
    public void PublishedHeaps_AreAsAccepted()
    {
        using var stream = typeof(PublishedHeapTests).Assembly.GetManifestResourceStream(
            "accepted.csv"
        )!;
        using var reader = new StreamReader(stream);
        var accepted = reader.ReadToEnd();
        output.WriteLine(Table());
        Assert.Equal(accepted, Table());
    }

    [Fact]
    public void Blind_PeakWithin10Degrees_OfAllButTheKnownFailures()
    {
        var known = Rows.Value.Where(r => r.Published.Peak is not null).ToArray();
        var errors = known.Select(r => r.Peak - r.Published.Peak!.Value).ToArray();
        Say(
            $"peak: n {errors.Length}, within 10: {errors.Count(e => Math.Abs(e) <= 10)}, mean error {errors.Average():F1}, mean absolute {errors.Average(Math.Abs):F1}"
        );
        foreach (var row in known)
        {
            var error = Math.Abs(row.Peak - row.Published.Peak!.Value);
            // A failure that is mended must leave the list.
            Assert.True(
                TooHot.Contains(row.Published.Heap.Name) == error > 10,
                $"{row.Published.Heap.Name}: {error:F1}"
            );
        }
    }

    [Fact]
    public void Blind_HeatsOrNot_CountsTheColdOnes()
    {
        var told = Rows.Value.Where(r => r.Published.Heats is not null).ToArray();
        var hot = told.Where(r => r.Published.Heats!.Value).ToArray();
        var cold = told.Where(r => !r.Published.Heats!.Value).ToArray();
        var balanced =
            (
                ((double)hot.Count(r => r.Heats) / hot.Length)
                + ((double)cold.Count(r => !r.Heats) / cold.Length)
            ) / 2;
        Say(
            $"heats or not: {hot.Count(r => r.Heats)} of {hot.Length} hot, {cold.Count(r => !r.Heats)} of {cold.Length} cold, balanced accuracy {balanced:F2}"
        );
        // One hot heap of ten is predicted at 53 °C. Of the three cold ones the wettest stays 2 K below the limit.
        Assert.Equal(Accepted, balanced, 2);
    }

    [Fact]
    public void Blind_First55_WithinADayOfTwoThirds()
    {
        var told = Rows.Value.Where(r => r.Published.First55 is not null).ToArray();
        var near = told.Count(r => Math.Abs(r.First55 - r.Published.First55!.Value) <= 1);
        Say($"55 °C within a day: {near} of {told.Length}");
        // The one that misses is the large heap, 1.6 days too early.
        Assert.True(3 * near >= 2 * told.Length, $"{near} of {told.Length}");
    }

    private void Say(FormattableString text) =>
        output.WriteLine(text.ToString(CultureInfo.InvariantCulture));

    private const double Accepted = 0.95;

    // Too hot by more than 10 °C: the litter, whose supply of air and size are not known. docs/models/heap.md says more.
    private static readonly string[] TooHot = ["broiler litter, static"];
}
