using System.Globalization;
using Heapwright.Core.Lessons;
using Heapwright.Validation.Forecasts;

namespace Heapwright.Validation.Lessons;

/// <summary>
/// Heaps held against each other where the truth is known; HEAPWRIGHT_PAIRS=40 makes as many of each kind
/// (docs/measurements.md).
/// </summary>
public class TwinComparisonTests(ITestOutputHelper output)
{
    private static readonly int Pairs = int.Parse(
        Environment.GetEnvironmentVariable("HEAPWRIGHT_PAIRS") ?? "6",
        CultureInfo.InvariantCulture
    );

    /// <summary>The interval of the effect holds the true one, and nothing changed is hardly ever called a change.</summary>
    [Theory]
    [InlineData(TwinStructure.Same)]
    [InlineData(TwinStructure.Other)]
    public void Compare_PairsOfKnownTruth_AreToldHonestly(TwinStructure structure)
    {
        var pairs = Enumerable.Range(1, Pairs).Select(n => TwinPair.Of(n, structure)).ToArray();
        var (inside, alarms, told) = (0, 0, 0);
        foreach (var figure in Enum.GetValues<HeapFigure>())
        {
            var k = (int)figure;
            const double Tiny = 1e-6;
            var covered = pairs.Count(p =>
                p.TrueEffect[k] >= p.Changed[k].Effect.Low - Tiny
                && p.TrueEffect[k] <= p.Changed[k].Effect.High + Tiny
            );
            var wrong = pairs.Count(p => p.Alike[k].Verdict == ComparisonVerdict.MoreThanChance);
            var sure = pairs
                .Where(p => p.Changed[k].EffectVerdict == ComparisonVerdict.MoreThanChance)
                .ToArray();
            var wrongWay = sure.Count(p => p.TrueEffect[k] * p.Changed[k].Effect.Typical < 0);
            var real = pairs.Where(p => Math.Abs(p.TrueEffect[k]) > 0.1).ToArray();
            var realCovered = real.Count(p =>
                p.TrueEffect[k] >= p.Changed[k].Effect.Low
                && p.TrueEffect[k] <= p.Changed[k].Effect.High
            );
            inside += covered;
            alarms += wrong;
            told += wrongWay;
            output.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{structure} {figure}: {Pairs} pairs, effect in the interval {covered} (where there is one, {realCovered} of {real.Length}), width {pairs.Average(p => p.Changed[k].Effect.High - p.Changed[k].Effect.Low):0.0}, error {Math.Sqrt(pairs.Average(p => Math.Pow(p.Changed[k].Effect.Typical - p.TrueEffect[k], 2))):0.00}, true effect {Math.Sqrt(pairs.Average(p => Math.Pow(p.TrueEffect[k], 2))):0.00}; effect told {sure.Length}, the wrong way {wrongWay}; nothing changed but called so {wrong}; changed and seen {pairs.Count(p => p.Changed[k].Verdict == ComparisonVerdict.MoreThanChance)}"
                )
            );
        }

        var all = 4 * Pairs;
        Assert.True(inside >= 0.8 * all, $"covered {inside} of {all}");
        Assert.True(alarms <= 0.1 * all, $"alarms {alarms} of {all}");
        Assert.True(told <= 0.05 * all, $"the wrong way {told} of {all}");
    }
}
