using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.FinishedCompost;

namespace Heapwright.App.Tests.Finish;

/// <summary>The data of finished compost hang together, and every word in them has its sentence.</summary>
public class TableTests
{
    private static readonly FinishTables Tables = FinishTableReader.Tables;

    [Fact]
    public void Classes_OfEveryScale_ShareOutAllValues()
    {
        foreach (var scale in Tables.Scales)
        {
            var ends = scale
                .Classes.SelectMany(c => new[] { c.Low, c.High })
                .OfType<double>()
                .Append(0)
                .SelectMany(e => new[] { Math.BitDecrement(e), e, Math.BitIncrement(e), e + 1 })
                .Append(1e9);
            Assert.All(ends, value => Assert.Single(scale.Classes, c => c.Holds(value)));
        }
    }

    [Fact]
    public void Evidence_OfAScale_CoversItsClassesAndAddsUpToOne()
    {
        foreach (var rows in Tables.Evidence.GroupBy(r => r.Sign, StringComparer.Ordinal))
        {
            Assert.All(
                rows,
                r =>
                {
                    Assert.Equal(4, r.Likelihood.Length);
                    Assert.All(r.Likelihood, l => Assert.InRange(l, 0.005, 0.99));
                    Assert.InRange(r.Weight, 0.1, 1);
                }
            );
            var scale = Tables.Scales.SingleOrDefault(s => s.Id == rows.Key);
            if (scale is null && rows.Key is "smell" or "see" or "visitors")
            {
                continue; // several of these may be found at once
            }

            for (var stage = 0; stage < 4; stage++)
            {
                Assert.Equal(1, rows.Sum(r => r.Likelihood[stage]), 1e-9);
            }

            if (scale is not null)
            {
                Assert.Equal(
                    scale.Classes.Select(c => c.Name).Order(StringComparer.Ordinal),
                    rows.Select(r => r.Found).Order(StringComparer.Ordinal)
                );
            }
        }
    }

    [Fact]
    public void Words_OfScalesClassesAndSigns_AreThere()
    {
        string[] codes =
        [
            .. Tables.Scales.Select(s => "scale_" + s.Id),
            .. Tables
                .Scales.Select(s => s.Quantity)
                .Where(q => q is not ("rise_c" or "reheat_rise_c"))
                .Select(q => "unit_" + q),
            .. Tables
                .Evidence.Where(r => Tables.Scales.All(s => s.Id != r.Sign))
                .Select(r => $"sign_{r.Sign}_{r.Found}"),
            .. Enum.GetNames<CompostUse>().Select(u => "use_" + Lower(u)),
            .. Enum.GetNames<CompostStage>().Select(s => "stage_" + Lower(s)),
            .. Enum.GetNames<Origin>().Select(o => "from_" + Lower(o)),
            .. Enum.GetNames<Origin>().Select(o => "mass_from_" + Lower(o)),
        ];

        Assert.All(codes, c => Assert.NotNull(Words.TryOf("finish." + c)));
        foreach (var scale in Tables.Scales)
        {
            Assert.All(
                scale.Classes,
                c =>
                    Assert.NotNull(
                        Words.TryOf($"finish.class_{scale.Id}_{c.Name}")
                            ?? Words.TryOf("finish.class_" + c.Name)
                    )
            );
        }
    }

    [Fact]
    public void Sources_StandInTheListOfSources()
    {
        var list = DataFiles.Text("references.bib");

        Assert.All(
            Tables
                .Scales.Select(s => s.Source)
                .Concat(Tables.Figures.Values.Select(f => f.Source))
                .Concat(Tables.Crops.Select(c => c.Source)),
            s => Assert.Contains($"{{{s},", list, StringComparison.Ordinal)
        );
    }

    private static string Lower(string name) => name.ToLowerInvariant();
}
