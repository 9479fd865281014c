using System.Globalization;

namespace Heapwright.Validation.Forecasts;

/// <summary>
/// Advice on invented heaps, followed, against three simple ways; HEAPWRIGHT_DECISIONS=200 makes as many
/// (docs/measurements.md).
/// </summary>
public class TwinDecisionTests(ITestOutputHelper output)
{
    private static readonly int Twins = int.Parse(
        Environment.GetEnvironmentVariable("HEAPWRIGHT_DECISIONS") ?? "4",
        CultureInfo.InvariantCulture
    );

    /// <summary>What was advised is on the whole worth more than each of the simple ways.</summary>
    [Fact]
    public void Advice_Followed_BeatsSimpleWays()
    {
        var all = Enumerable
            .Range(1, Twins)
            .Select(n => TwinDecision.Of(new HeapTwin(n, TwinStructure.Finer)))
            .ToArray();
        var advised = Describe("advised", all, d => d.Advised);
        Assert.True(advised >= Describe("left alone", all, d => d.Waiting));
        Assert.True(advised >= Describe("every four days", all, d => d.EveryFourDays));
        Assert.True(advised >= Describe("by temperature", all, d => d.ByTemperature));
    }

    private double Describe(
        string way,
        IReadOnlyList<TwinDecision> all,
        Func<TwinDecision, TwinResult> of
    )
    {
        var worth = all.Average(d => of(d).Worth);
        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{way}: worth {worth:0.0}, share {all.Average(d => of(d).Share):0.0} %, {all.Average(d => of(d).Minutes):0} minutes, {all.Average(d => of(d).Turns):0.0} turns; advice better in {all.Count(d => d.Advised.Worth > of(d).Worth)}, worse in {all.Count(d => d.Advised.Worth < of(d).Worth)} of {all.Count}; worst loss {all.Max(d => of(d).Worth - d.Advised.Worth):0.0}"
            )
        );
        return worth;
    }
}
