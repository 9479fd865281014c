using System.Runtime.Intrinsics;
using Heapwright.Numerics.Odes;

namespace Heapwright.Numerics.Tests.Odes;

/// <summary>Equations written down in a test, every state with the same tolerance.</summary>
internal sealed class Equations(int count, double tolerance, Equations.RateOfChange rates)
    : ILockStepSystem
{
    public delegate void RateOfChange(
        double time,
        ReadOnlySpan<Vector512<double>> state,
        Span<Vector512<double>> rate
    );

    public int StateCount => count;

    /// <summary>The drawn states; none unless said.</summary>
    public int[] Drawn { get; init; } = [];

    /// <summary>Their pace.</summary>
    public double Pace { get; init; }

    ReadOnlySpan<int> ILockStepSystem.Drawn => Drawn;

    /// <summary>The times at which rates were asked for.</summary>
    public List<double> Times { get; } = [];

    public void Rates(
        double time,
        ReadOnlySpan<Vector512<double>> state,
        Span<Vector512<double>> rate
    )
    {
        Times.Add(time);
        rates(time, state, rate);
    }

    public double ErrorOf(
        ReadOnlySpan<Vector512<double>> state,
        ReadOnlySpan<Vector512<double>> error
    )
    {
        var worst = 0.0;
        foreach (var e in error)
        {
            for (var lane = 0; lane < 8; lane++)
            {
                // Max keeps what is not a number.
                worst = Math.Max(worst, Math.Abs(e[lane]) / tolerance);
            }
        }

        return worst;
    }
}
