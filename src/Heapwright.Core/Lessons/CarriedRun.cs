using Heapwright.Core.Forecasts;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Lessons;

/// <summary>A heap run with what another one taught.</summary>
/// <param name="Run">The run.</param>
/// <param name="Unknowns">Its members.</param>
internal sealed record CarriedRun(EnsembleRun Run, Unknowns Unknowns)
{
    /// <summary>Runs a heap with members in step with those fitted to another.</summary>
    /// <param name="question">The heap, and to which day.</param>
    /// <param name="fit">The other heap.</param>
    /// <param name="inStep">1 for the same heap under other circumstances, less for another one.</param>
    /// <param name="cancellation">Gives up.</param>
    public static CarriedRun Of(
        SimulationQuestion question,
        HeapFit fit,
        double inStep,
        CancellationToken cancellation
    )
    {
        var n = fit.After.Count;
        question = question with { Members = n };
        // Members are drawn by twos, fours, eights, …; as many as are wanted are taken of them.
        var wide = question with
        {
            Members = (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)n),
        };
        var mixture = HeapBuilder.MixtureFor(wide.Mixture, wide.Members, wide.Seed);
        var drawn = Unknowns
            .Draw(wide, HeapMembers.Of(wide, mixture), HeapKnowledge.None)
            .Take([.. Enumerable.Range(0, n)]);
        var members = drawn.InStepWith(fit.After, inStep);
        members.Confine();
        return new CarriedRun(
            EnsembleRun.From(
                question,
                HeapMatter.Of(mixture, -1),
                members.ToMembers(),
                cancellation
            ),
            members
        );
    }

    /// <summary>The core at days, shape [time][member], °C; the error of the model is not in it.</summary>
    /// <param name="days">Days since building.</param>
    public double[][] Core(double[] days)
    {
        var core = Regions.Core(Run.Grid);
        return Array.ConvertAll(days, d => Forecaster.CoreAt(Run, core, d));
    }

    /// <summary>Share of the matter held hot, percent, shape [member].</summary>
    public double[] ShareHeld() =>
        [.. HeapOutcome.Of(Run, Run.Question.Days).Select(o => o.ShareHeldPercent)];
}
