using Heapwright.Core.Simulation;

namespace Heapwright.Core.Forecasts;

/// <summary>How a heap has gone by the end of the time that is followed, in one member.</summary>
/// <param name="ShareHeldPercent">Share of the matter held at 55 °C or above for 72 hours without a break, %.</param>
/// <param name="DoneDay">
/// When little fast matter is left, days since building; beyond the time that is followed it is carried on at the pace
/// of the last days. NaN where that pace is next to nothing.
/// </param>
/// <param name="DryLossPercent">Dry matter lost, % of all that was put in.</param>
/// <param name="NitrogenLossPercent">Nitrogen lost, % of all that was put in.</param>
/// <param name="Now">What is left at the day that is decided on.</param>
public readonly record struct HeapOutcome(
    double ShareHeldPercent,
    double DoneDay,
    double DryLossPercent,
    double NitrogenLossPercent,
    HeapRest Now
)
{
    /// <summary>The share of the fast matter that is left when the hot phase counts as done: an estimate of our own.</summary>
    public const double FastLeft = 0.1;

    private const double PaceOver = 4; // d
    private const double LeastPace = 0.005; // 1/d

    /// <summary>The outcome in every member of a run.</summary>
    /// <param name="run">The run.</param>
    /// <param name="fromDay">Done is not looked for before this day: what was there then is what is decided on.</param>
    /// <returns>Shape [member].</returns>
    internal static HeapOutcome[] Of(EnsembleRun run, double fromDay)
    {
        var outcomes = new HeapOutcome[run.Question.Members];
        for (var i = 0; i < outcomes.Length; i++)
        {
            var (b, lane) = Math.DivRem(i, HeapBlock.Lanes);
            outcomes[i] = Of(run.Blocks[b], lane, fromDay);
        }

        return outcomes;
    }

    private static HeapOutcome Of(BlockRun run, int lane, double fromDay)
    {
        var last = run.Looks[^1];
        var dryIn = run.DryIn(lane);
        var block = run.Block;
        return new HeapOutcome(
            run.Parcels?.HeldPercent()[lane] ?? double.NaN,
            Done(run.Looks, lane, fromDay),
            100 * (dryIn - last.DryOf(lane)) / dryIn,
            100
                * (block.Of(Total.AmmoniaOut, lane) + block.Of(Total.NitrogenDrained, lane))
                / run.PutIn(lane).Nitrogen,
            Rest(run.Looks, lane, fromDay)
        );
    }

    private static HeapRest Rest(List<HeapLook> looks, int lane, double fromDay)
    {
        var now = looks[0];
        var most = 0.0;
        foreach (var look in looks.TakeWhile(l => l == looks[0] || l.Day <= fromDay))
        {
            now = look;
            most = Math.Max(most, look.FastOf(lane));
        }

        return new HeapRest(
            100 * now.FastOf(lane) / most,
            now.DryOf(lane),
            now.MoistureOf(lane),
            1000 * now.Volume[lane]
        );
    }

    private static double Done(List<HeapLook> looks, int lane, double fromDay)
    {
        // The most that was ever in it: fresh matter that is added puts the end off.
        var most = 0.0;
        var reached = double.NaN;
        foreach (var look in looks)
        {
            var fast = look.FastOf(lane);
            most = Math.Max(most, fast);
            if (fast > FastLeft * most)
            {
                reached = double.NaN;
            }
            else if (double.IsNaN(reached))
            {
                reached = look.Day;
            }
        }

        if (!double.IsNaN(reached))
        {
            return reached;
        }

        var end = looks[^1];
        var start = looks.FindLast(l => l.Day <= Math.Max(end.Day - PaceOver, fromDay)) ?? looks[0];
        var days = end.Day - start.Day;
        if (days <= 0)
        {
            return double.NaN;
        }

        var pace = Math.Log(start.FastOf(lane) / end.FastOf(lane)) / days;
        return pace >= LeastPace
            ? end.Day + (Math.Log(end.FastOf(lane) / (FastLeft * most)) / pace)
            : double.NaN;
    }
}
