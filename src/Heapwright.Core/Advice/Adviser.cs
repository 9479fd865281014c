using System.Collections.Immutable;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Reasons;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Advice;

/// <summary>
/// What to do next: every candidate is simulated from the present on in the same fitted members, and held against
/// waiting member by member. The entry to everything in this folder.
/// </summary>
public static class Adviser
{
    private const int FirstBlocks = 3; // members of the first round: eight times as many
    private const int SecondBlocks = 8;
    private const int Kept = 4; // beside waiting, for the second round
    private const double AsGood = 0.5; // of the margin: gains nearer than this are as good as each other
    private const double Likely = 0.6; // an action that helps in fewer members than this share is not advised

    /// <summary>Ranks what might be done; the first is the advice.</summary>
    /// <param name="forecast">The heap.</param>
    /// <param name="aim">What counts.</param>
    /// <param name="stock">What could be added.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>Best first; waiting is always among them, and first where nothing beats it by enough.</returns>
    public static ImmutableArray<RankedAction> Advise(
        ForecastAnswer forecast,
        AdviceAim aim,
        IReadOnlyList<StockStuff> stock,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(forecast);
        ArgumentNullException.ThrowIfNull(stock);
        var rule = AimRule.Of(aim, forecast.Question.FromDay);
        var all = Candidates.Of(forecast, stock);
        var first = Try(forecast, all, rule, FirstBlocks, cancellation);
        ImmutableArray<HeapAction> best =
        [
            all[0],
            .. first
                .Skip(1)
                .OrderByDescending(r => r.Gain)
                .ThenBy(r => r.Action.OnDay)
                .Take(Kept)
                .Select(r => r.Action),
        ];
        var second = Try(forecast, best, rule, SecondBlocks, cancellation);
        // What came through the first round only keeps what it showed there.
        var tried = second
            .Concat(first.Where(r => !best.Contains(r.Action)))
            .Where(r => r.Action.Deed != ActionKind.Wait)
            .ToArray();
        var most = tried
            .Where(r => IsWorthIt(r, rule))
            .Select(r => r.Gain)
            .DefaultIfEmpty(double.PositiveInfinity)
            .Max();
        // Of those that can hardly be told apart the least work comes first, lest the noise of a reading decide.
        bool IsAsGood(RankedAction r) =>
            IsWorthIt(r, rule) && r.Gain >= most - (AsGood * rule.Margin);
        var results = tried
            .OrderByDescending(r => IsWorthIt(r, rule))
            .ThenByDescending(IsAsGood)
            .ThenBy(r => IsAsGood(r) ? r.Action.Minutes : 0)
            .ThenByDescending(r => r.Gain)
            .ThenBy(r => r.Action.OnDay)
            .ToList();
        var worthIt = results.Count(r => IsWorthIt(r, rule));
        var wait = second[0];
        results.Insert(worthIt, wait);
        return
        [
            .. results.Select(r =>
                r with
                {
                    // Against waiting in the same members, which in the first round are fewer.
                    Why = Why(
                        r,
                        r.Outcomes.Length == wait.Outcomes.Length ? wait : first[0],
                        aim,
                        IsWorthIt(r, rule),
                        results
                    ),
                }
            ),
        ];
    }

    private static bool IsWorthIt(RankedAction result, AimRule rule) =>
        result.Gain >= rule.Margin && result.ChanceBetter >= Likely;

    private static ImmutableArray<RankedAction> Try(
        ForecastAnswer forecast,
        ImmutableArray<HeapAction> actions,
        AimRule rule,
        int count,
        CancellationToken cancellation
    )
    {
        var now = forecast.Runs.Fit.Now;
        // Evenly over the members, which stand in order of how warm they are.
        var blocks = Enumerable
            .Range(0, Math.Min(count, now.Blocks.Length))
            .Select(k => (int)((k + 0.5) * now.Blocks.Length / Math.Min(count, now.Blocks.Length)))
            .ToArray();
        var outcomes = new HeapOutcome[actions.Length][];
        Parallel.For(
            0,
            actions.Length,
            new ParallelOptions { CancellationToken = cancellation },
            a => outcomes[a] = Outcomes(forecast, actions[a], blocks, cancellation)
        );
        var waiting = outcomes[0];
        return
        [
            .. actions.Select(
                (action, a) =>
                {
                    var gains = outcomes[a]
                        .Select((o, i) => rule.Worth(o) - rule.Worth(waiting[i]))
                        .ToArray();
                    return new RankedAction(
                        action,
                        [.. outcomes[a]],
                        gains.Average() - (rule.PerMinute * action.Minutes),
                        gains.Count(g => g > 0) / (double)gains.Length,
                        Reason.Of("advice.wait")
                    );
                }
            ),
        ];
    }

    private static HeapOutcome[] Outcomes(
        ForecastAnswer forecast,
        HeapAction action,
        int[] blocks,
        CancellationToken cancellation
    )
    {
        var (fit, planned) = forecast.Runs;
        var heap = forecast.Question.Heap;
        var past = heap.Events.OfType<Added>().Count(e => e.Day <= forecast.Question.FromDay);
        // What was planned, in order of time, each addition with its matter; then what is tried.
        var feeds = HeapMembers
            .AdditionsOf(planned.Question)
            .Select((e, k) => (Event: (HeapEvent)e, Matter: fit.Now.Members.Additions[past + k]))
            .Where(f => f.Event.Day > action.NothingAddedUntil)
            .ToList();
        foreach (var added in action.Events.OfType<Added>())
        {
            feeds.Add((added, HeapMembers.Matters(added.Ingredients, fit.Now.Question)));
        }

        feeds = [.. feeds.OrderBy(f => f.Event.Day)];
        var question = planned.Question with
        {
            Events =
            [
                .. planned.Question.Events.Where(e => e is not Added),
                .. feeds.Select(f => f.Event),
                .. action.Events.Where(e => e is not Added),
            ],
        };
        return HeapOutcome.Of(
            fit.Now.Branch(question, [.. feeds.Select(f => f.Matter)], cancellation, blocks),
            forecast.Question.FromDay
        );
    }

    private static Reason Why(
        RankedAction result,
        RankedAction wait,
        AdviceAim aim,
        bool worthIt,
        IReadOnlyList<RankedAction> all
    )
    {
        var (before, after) = (Middle(wait, aim), Middle(result, aim));
        if (result.Action.Deed == ActionKind.Wait)
        {
            return all[0] == result
                ? Reason.Of("advice.wait." + Word(aim), before)
                : Reason.Of("advice.wait_worse." + Word(aim), before);
        }

        return Reason.Of(
            (worthIt ? "advice.worth." : "advice.not_worth.") + Word(aim),
            before,
            after,
            result.Action.Minutes,
            100 * result.ChanceBetter
        );
    }

    private static string Word(AdviceAim aim) =>
        aim switch
        {
            AdviceAim.Fast => "fast",
            AdviceAim.KeepNitrogen => "keep_nitrogen",
            _ => "heat",
        };

    private static double Middle(RankedAction result, AdviceAim aim)
    {
        double[] values =
        [
            .. result
                .Outcomes.Select(o =>
                    aim switch
                    {
                        AdviceAim.Fast => double.IsNaN(o.DoneDay)
                            ? double.PositiveInfinity
                            : o.DoneDay,
                        AdviceAim.KeepNitrogen => o.NitrogenLossPercent,
                        _ => o.ShareHeldPercent,
                    }
                )
                .Order(),
        ];
        return values[values.Length / 2];
    }
}
