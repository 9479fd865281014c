using System.Runtime.Intrinsics;
using Heapwright.Numerics.Odes;
using V8 = System.Runtime.Intrinsics.Vector512<double>;

namespace Heapwright.Numerics.Tests.Odes;

/// <summary>How steps are chosen, refused and ended, and what the members share.</summary>
public class LockStepIntegratorTests
{
    private static readonly V8 LaneNumber = Vector512.Create(1.0, 2, 3, 4, 5, 6, 7, 8);

    [Fact]
    public void Advance_ToleranceAHundredthAsLarge_ErrorFallsInProportion()
    {
        // A third order method with control of the error per step: the error at the end goes about with the tolerance
        // to the power 1 (the steps are set by a second order estimate, the result is of the third order).
        var coarse = ErrorOfWobble(1e-5);
        var fine = ErrorOfWobble(1e-7);
        Assert.InRange(coarse, 1e-7, 1e-4);
        Assert.InRange(fine, 1e-9, 1e-6);
        Assert.InRange(coarse / fine, 30, 300);
    }

    [Theory]
    [InlineData(0.3, 0.01)]
    [InlineData(1.0 / 3, 0.25)]
    [InlineData(0.125, 0.0834)]
    [InlineData(7.1, 0.2)]
    public void Advance_LastStep_LandsExactlyOnTheEnd(double end, double longest)
    {
        var equations = Growth(1e-3);
        V8[] state = [V8.One];
        var integrator = new LockStepIntegrator(equations, ButcherTableau.BogackiShampine);
        integrator.Advance(state, 0, end, 0.01, longest);
        // The last stage stands at the end, to rounding; nothing is asked for beyond it.
        Assert.Equal(end, equations.Times.Max(), 1e-15 * end);
        Assert.InRange(state[0][0], Math.Exp(end) * 0.999, Math.Exp(end) * 1.001);
    }

    [Fact]
    public void Advance_ManyShortLegs_AddUpToTheWhole()
    {
        // y′ = 1 is integrated exactly, so y is the time that was covered.
        var equations = new Equations(1, 1e-3, (_, _, rate) => rate[0] = V8.One);
        var integrator = new LockStepIntegrator(equations, ButcherTableau.BogackiShampine);
        V8[] state = [V8.Zero];
        for (var i = 0; i < 480; i++)
        {
            integrator.Advance(state, i * 0.125, (i + 1) * 0.125, 0.005, 0.25);
        }

        Assert.InRange(state[0][3], 60 - 1e-11, 60 + 1e-11);
    }

    [Fact]
    public void Advance_LongestStep_IsNeverExceeded()
    {
        var equations = new Equations(1, 1, (_, _, rate) => rate[0] = V8.One);
        var integrator = new LockStepIntegrator(equations, ButcherTableau.BogackiShampine);
        V8[] state = [V8.Zero];
        integrator.Advance(state, 0, 10, 0.25, 0.25);
        Assert.InRange(integrator.Steps, 40, 42);
    }

    [Fact]
    public void Advance_NoTimeToPass_ChangesNothing()
    {
        var equations = Growth(1e-3);
        var integrator = new LockStepIntegrator(equations, ButcherTableau.BogackiShampine);
        V8[] state = [V8.One];
        integrator.Advance(state, 4, 4, 0.1, 0.25);
        Assert.Equal(V8.One, state[0]);
        Assert.Equal(0, integrator.Steps);
        Assert.Empty(equations.Times);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Restart_EquationsChanged_OnlyWithItTheOldSlopeIsForgotten(bool restart)
    {
        var slope = 1.0;
        var equations = new Equations(1, 1e6, (_, _, rate) => rate[0] = Vector512.Create(slope));
        var integrator = new LockStepIntegrator(equations, ButcherTableau.BogackiShampine);
        V8[] state = [V8.Zero];
        integrator.Advance(state, 0, 1, 0.25, 0.25);
        slope = -1;
        if (restart)
        {
            integrator.Restart();
        }

        integrator.Advance(state, 1, 2, 0.25, 0.25);
        // Without it the first step of 0.25 still has 2/9 of its weight on the slope +1: 2 · 0.25 · 2/9 too much.
        Assert.InRange(state[0][0] - (restart ? 0 : 1.0 / 9), -1e-12, 1e-12);
    }

    [Fact]
    public void Advance_FirstStepFarTooLong_IsRefusedAndLeavesNoTrace()
    {
        var equations = new Equations(
            1,
            1e-6,
            (_, y, rate) => rate[0] = Vector512.Create(-60.0) * y[0]
        );
        var integrator = new LockStepIntegrator(equations, ButcherTableau.BogackiShampine);
        V8[] state = [V8.One];
        integrator.Advance(state, 0, 0.1, 0.1, 1);
        Assert.True(integrator.Refused >= 1);
        // e^−6
        Assert.InRange(state[0][7], 0.0024787521766663585 - 1e-5, 0.0024787521766663585 + 1e-5);
        // Three slopes for each step tried, and one for the very first: a refused step costs no more than that.
        Assert.Equal(1 + (3 * (integrator.Steps + integrator.Refused)), equations.Times.Count);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Advance_RateWithoutAFiniteValue_SaysSoAndKeepsTheLastGoodState(double bad)
    {
        // In one lane only, from the time 0.5 on.
        var equations = new Equations(
            1,
            1e-3,
            (t, y, rate) => rate[0] = t > 0.5 ? y[0].WithElement(2, bad) : y[0]
        );
        var integrator = new LockStepIntegrator(equations, ButcherTableau.BogackiShampine);
        V8[] state = [V8.One];
        var wrong = Assert.Throws<ArithmeticException>(() =>
            integrator.Advance(state, 0, 1, 0.01, 0.25)
        );
        Assert.Contains("no finite answer at time 0.", wrong.Message, StringComparison.Ordinal);
        // √e, since it stopped within a hair of 0.5.
        Assert.InRange(state[0][2], 1.6487212707 - 1e-3, 1.6487212707 + 1e-3);
    }

    [Fact]
    public void Step_FixedSteps_AMemberDoesNotDependOnItsNeighbours()
    {
        // With given steps nothing passes from lane to lane: the same bits whatever the others do. (With steps chosen
        // by the error the members share the step, so that a member is the same only within the tolerance.)
        var alone = Wobble([1, 1, 1, 1, 1, 1, 1, 1], 1e-6, fixedSteps: true);
        var crowd = Wobble([0.1, 9, 5, 1, 3, 0, 2, 30], 1e-6, fixedSteps: true);
        Assert.Equal(alone[3], crowd[3]);
        Assert.NotEqual(alone[4], crowd[4]);
    }

    [Fact]
    public void Advance_SharedStep_AMemberIsTheSameWithinTheTolerance()
    {
        var alone = Wobble([1, 1, 1, 1, 1, 1, 1, 1], 1e-6, fixedSteps: false);
        var crowd = Wobble([0.1, 9, 5, 1, 3, 0, 2, 30], 1e-6, fixedSteps: false);
        Assert.InRange(alone[3] - crowd[3], -1e-5, 1e-5);
    }

    [Fact]
    public void Advance_MembersInAnotherOrder_GivesTheSameBitsInThatOrder()
    {
        var one = Wobble([1, 2, 3, 4, 5, 6, 7, 8], 1e-6, fixedSteps: false);
        var other = Wobble([8, 7, 6, 5, 4, 3, 2, 1], 1e-6, fixedSteps: false);
        for (var lane = 0; lane < 8; lane++)
        {
            Assert.Equal(one[lane], other[7 - lane]);
        }
    }

    [Fact]
    public void Integrator_WithoutEquationsOrMethod_IsRefused()
    {
        Assert.Throws<ArgumentNullException>(() =>
            new LockStepIntegrator(null!, ButcherTableau.HeunEuler)
        );
        Assert.Throws<ArgumentNullException>(() => new LockStepIntegrator(Growth(1), null!));
    }

    private static Equations Growth(double tolerance) =>
        new(1, tolerance, (_, y, rate) => rate[0] = y[0]);

    // y′ = cos(t) y, whose answer is e^(sin t).
    private static double ErrorOfWobble(double tolerance)
    {
        var equations = new Equations(
            1,
            tolerance,
            (t, y, rate) => rate[0] = Vector512.Create(Math.Cos(t)) * y[0]
        );
        V8[] state = [V8.One];
        new LockStepIntegrator(equations, ButcherTableau.BogackiShampine).Advance(
            state,
            0,
            10,
            0.01,
            1
        );
        return Math.Abs(state[0][0] - Math.Exp(Math.Sin(10)));
    }

    private static V8 Wobble(double[] pace, double tolerance, bool fixedSteps)
    {
        var speed = Vector512.Create(pace);
        var equations = new Equations(
            2,
            tolerance,
            (t, y, rate) =>
            {
                rate[0] = speed * y[1];
                rate[1] = -(y[0] * y[0] * y[0]) - (Vector512.Create(0.1 + (0.01 * t)) * y[1]);
            }
        );
        V8[] state = [V8.One, LaneNumber - LaneNumber];
        var integrator = new LockStepIntegrator(equations, ButcherTableau.BogackiShampine);
        if (fixedSteps)
        {
            for (var i = 0; i < 300; i++)
            {
                integrator.Step(state, i * 0.01, 0.01);
            }
        }
        else
        {
            integrator.Advance(state, 0, 3, 0.01, 0.25);
        }

        return state[0];
    }
}
