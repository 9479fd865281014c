using Heapwright.Core.Simulation;
using Heapwright.Core.Tests.Simulation;

namespace Heapwright.Core.Tests.Forecasts;

/// <summary>Forecasts let oxygen follow more slowly than simulations do; what that costs is far below a reading's error.</summary>
public class SlowOxygenTests(ITestOutputHelper output)
{
    [Fact]
    public void Core_WithSlowOxygen_IsWithinHalfAKelvinAtNearlyAllTimes()
    {
        var question = SameBitsTests.Question() with { Members = 64, Days = 14 };
        var usual = HeapSimulation.Run(question, TestContext.Current.CancellationToken);
        var slow = HeapSimulation.Run(
            question with
            {
                Parameters = question.Parameters.With((HeapParameter.OxygenTime, 0.05)),
            },
            TestContext.Current.CancellationToken
        );

        double[] off =
        [
            .. usual
                .Core.SelectMany((row, t) => row.Select((c, i) => Math.Abs(c - slow.Core[t][i])))
                .Order(),
        ];
        output.WriteLine(
            FormattableString.Invariant(
                $"median {off[off.Length / 2]:0.00} K, 95th percentile {off[(int)(0.95 * off.Length)]:0.00} K, most {off[^1]:0.00} K; steps {usual.Steps} and {slow.Steps}"
            )
        );
        Assert.InRange(off[(int)(0.95 * off.Length)], 0.001, 0.5);
        Assert.True(slow.Steps < 0.7 * usual.Steps);
    }
}
