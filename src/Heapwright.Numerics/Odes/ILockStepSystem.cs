using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Odes;

/// <summary>
/// Ordinary differential equations of eight members at once, one in each lane. The members share the time and the
/// step; nothing passes from lane to lane.
/// </summary>
public interface ILockStepSystem
{
    /// <summary>The number of states of one member.</summary>
    int StateCount { get; }

    /// <summary>
    /// The states that are drawn to a balance at a pace: their rate is pace · (balance − state). None of them is among
    /// what is conserved. Where the method knows them apart, a fast pace does not shorten the step.
    /// </summary>
    ReadOnlySpan<int> Drawn => [];

    /// <summary>The pace of the <see cref="Drawn"/> states, per unit of time. One that is nearly right costs no order.</summary>
    double Pace => 0;

    /// <summary>The rates of change.</summary>
    /// <param name="time">The time.</param>
    /// <param name="state">Shape [state], a member in each lane.</param>
    /// <param name="rate">Shape [state]: receives the rate of each state per unit of time; every element is set.</param>
    void Rates(double time, ReadOnlySpan<Vector512<double>> state, Span<Vector512<double>> rate);

    /// <summary>The greatest error of a step over states and lanes, in units of what is tolerated.</summary>
    /// <param name="state">Shape [state]: the state reached.</param>
    /// <param name="error">Shape [state]: the estimated error of the step.</param>
    /// <returns>1 is just tolerated; NaN counts as refused.</returns>
    double ErrorOf(ReadOnlySpan<Vector512<double>> state, ReadOnlySpan<Vector512<double>> error);
}
