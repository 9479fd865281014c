using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Odes;

/// <summary>
/// Integrates eight members in lock-step by an explicit Runge–Kutta method with one adaptive step that all of them
/// share; the Bogacki–Shampine method steps drawn states by <see cref="DrawnWeights"/>. What is conserved linearly by the
/// rates (masses, energy with its losses as states) is conserved to rounding.
/// </summary>
public sealed class LockStepIntegrator
{
    private const double Caution = 0.85;
    private const double MostGrowth = 3;
    private const double MostShrinking = 0.2;

    private readonly ILockStepSystem system;
    private readonly ButcherTableau tableau;
    private readonly Vector512<double>[][] slopes;
    private readonly Vector512<double>[] trial;
    private readonly Vector512<double>[] error;
    private readonly Vector512<double>[][] pulls; // [stage][drawn state]
    private readonly DrawnWeights drawnWeights = new();
    private readonly bool reuse;
    private double suggested;
    private bool haveFirst;

    /// <summary>Prepares to integrate.</summary>
    /// <param name="system">The equations.</param>
    /// <param name="tableau">The method.</param>
    public LockStepIntegrator(ILockStepSystem system, ButcherTableau tableau)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(tableau);
        this.system = system;
        this.tableau = tableau;
        slopes = new Vector512<double>[tableau.Nodes.Length][];
        for (var i = 0; i < slopes.Length; i++)
        {
            slopes[i] = new Vector512<double>[system.StateCount];
        }

        var drawn = tableau == ButcherTableau.BogackiShampine ? system.Drawn.Length : 0;
        pulls = [.. slopes.Select(_ => new Vector512<double>[drawn])];
        trial = new Vector512<double>[system.StateCount];
        error = new Vector512<double>[system.StateCount];
        reuse = tableau.LastIsFirst;
    }

    /// <summary>The number of steps taken so far.</summary>
    public long Steps { get; private set; }

    /// <summary>The number of steps that were tried and refused so far.</summary>
    public long Refused { get; private set; }

    /// <summary>Says that the state or the equations were changed from outside, so that no slope is carried over.</summary>
    public void Restart() => haveFirst = false;

    /// <summary>Goes from one time to a later one with steps chosen by the error.</summary>
    /// <param name="state">Shape [state]: the state at the start; receives that at the end.</param>
    /// <param name="from">The start.</param>
    /// <param name="to">The end, not before the start.</param>
    /// <param name="firstStep">The step tried first if none was taken before.</param>
    /// <param name="longest">The longest step allowed.</param>
    /// <exception cref="ArithmeticException">No step is short enough: the equations give no finite answer.</exception>
    public void Advance(
        Span<Vector512<double>> state,
        double from,
        double to,
        double firstStep,
        double longest
    )
    {
        var time = from;
        while (time < to)
        {
            var step = Math.Min(suggested > 0 ? suggested : firstStep, longest);
            var left = to - time;
            // A last step that would leave a crumb is stretched or halved instead.
            var used =
                step >= left * 0.999999 ? left : Math.Min(step, Math.Max(left / 2, step / 2));
            var wrong = Try(state, time, used);
            if (wrong <= 1)
            {
                trial.CopyTo(state);
                time = used == left ? to : time + used;
                Steps++;
                if (reuse)
                {
                    (slopes[0], slopes[^1]) = (slopes[^1], slopes[0]);
                    haveFirst = true;
                }
                else
                {
                    haveFirst = false;
                }

                var growth = Growth(wrong);
                // A step cut short by the end says little about the one that could be taken.
                suggested = used < step && growth >= 1 ? step : used * growth;
            }
            else
            {
                Refused++;
                haveFirst = true; // the slope at this time still holds
                suggested =
                    used * (double.IsFinite(wrong) ? Math.Min(Growth(wrong), 0.9) : MostShrinking);
                if (suggested < 1e-9 * longest)
                {
                    throw new ArithmeticException(
                        "the equations give no finite answer at time "
                            + time.ToString(System.Globalization.CultureInfo.InvariantCulture)
                    );
                }
            }
        }
    }

    /// <summary>Takes one step of a given size, whatever its error.</summary>
    /// <param name="state">Shape [state]: the state at the start; receives that at the end.</param>
    /// <param name="time">The start.</param>
    /// <param name="step">The size.</param>
    /// <returns>The error of the step as the system measures it.</returns>
    public double Step(Span<Vector512<double>> state, double time, double step)
    {
        haveFirst = false;
        var wrong = Try(state, time, step);
        trial.CopyTo(state);
        Steps++;
        return wrong;
    }

    private double Growth(double wrong) =>
        Math.Clamp(
            Caution * Math.Pow(Math.Max(wrong, 1e-6), -1.0 / (tableau.ErrorOrder + 1)),
            MostShrinking,
            MostGrowth
        );

    private double Try(ReadOnlySpan<Vector512<double>> state, double time, double step)
    {
        if (!haveFirst)
        {
            system.Rates(time, state, slopes[0]);
        }

        drawnWeights.Set(system.Pace * step);
        Pull(0, state, state);
        for (var s = 1; s < slopes.Length; s++)
        {
            Combine(state, tableau.Stages[s].AsSpan(), step, trial);
            Draw(state, s, step, trial);
            system.Rates(time + (tableau.Nodes[s] * step), trial, slopes[s]);
            Pull(s, state, trial);
        }

        if (!reuse)
        {
            Combine(state, tableau.Weights.AsSpan(), step, trial);
        }

        Combine(default, tableau.ErrorWeights.AsSpan(), step, error);
        Draw(default, slopes.Length, step, error);
        return system.ErrorOf(trial, error);
    }

    // How drawn states would move at the time of a stage if they were still where the step began.
    private void Pull(
        int stage,
        ReadOnlySpan<Vector512<double>> start,
        ReadOnlySpan<Vector512<double>> reached
    )
    {
        var pull = pulls[stage];
        var pace = Vector512.Create(system.Pace);
        for (var d = 0; d < pull.Length; d++)
        {
            var i = system.Drawn[d];
            pull[d] = Vector512.FusedMultiplyAdd(pace, reached[i] - start[i], slopes[stage][i]);
        }
    }

    // The drawn states at a stage, or after the last the error: start + step · Σ weight · pull; an empty start stands for zero.
    private void Draw(
        ReadOnlySpan<Vector512<double>> start,
        int stage,
        double step,
        Vector512<double>[] result
    )
    {
        if (pulls[0].Length == 0)
        {
            return;
        }

        var weights = stage < slopes.Length ? drawnWeights.Stage(stage) : drawnWeights.Error;
        for (var d = 0; d < pulls[0].Length; d++)
        {
            var i = system.Drawn[d];
            var sum = start.IsEmpty ? Vector512<double>.Zero : start[i];
            for (var s = 0; s < weights.Length; s++)
            {
                sum = Vector512.FusedMultiplyAdd(
                    Vector512.Create(weights[s] * step),
                    pulls[s][d],
                    sum
                );
            }

            result[i] = sum;
        }
    }

    // start + step · Σ weight · slope; an empty start stands for zero.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Combine(
        ReadOnlySpan<Vector512<double>> start,
        ReadOnlySpan<double> weights,
        double step,
        Vector512<double>[] result
    )
    {
        if (start.IsEmpty)
        {
            Array.Clear(result);
        }
        else
        {
            start.CopyTo(result);
        }

        for (var s = 0; s < weights.Length; s++)
        {
            if (weights[s] == 0)
            {
                continue;
            }

            var weight = Vector512.Create(weights[s] * step);
            var slope = slopes[s];
            for (var i = 0; i < result.Length; i++)
            {
                result[i] = Vector512.FusedMultiplyAdd(weight, slope[i], result[i]);
            }
        }
    }
}
