using System.Runtime.Intrinsics;
using Heapwright.Numerics.Odes;

namespace Heapwright.Numerics.Tests.Odes;

/// <summary>States drawn to a balance: the weights against integrals, and what the integrator makes of them.</summary>
public class DrawnWeightsTests
{
    public static TheoryData<double> Decays => [0, 1e-9, 1e-3, 0.3, 0.4999999, 0.5, 1, 3, 12, 50];

    [Fact]
    public void Set_NoPace_GivesTheMethodItself()
    {
        var weights = new DrawnWeights();
        weights.Set(0);
        var method = ButcherTableau.BogackiShampine;
        for (var s = 0; s < 4; s++)
        {
            Assert.Equal(method.Stages[s], weights.Stage(s).ToArray(), Near(1e-14));
        }

        Assert.Equal(method.ErrorWeights, weights.Error.ToArray(), Near(1e-14));
    }

    [Theory]
    [MemberData(nameof(Decays))]
    public void Set_AnyDecay_SumsAreTheIntegralsTheyStandFor(double x)
    {
        // Σ w c^k = ∫ e^−x(1−s) s^k ds from 0 to 1, so that balances that move as 1, t, t² are followed exactly.
        var weights = new DrawnWeights();
        weights.Set(x);
        double[] times = [0, 0.5, 0.75];
        var result = weights.Stage(3).ToArray();
        for (var k = 0; k < 3; k++)
        {
            var sum = result.Zip(times, (w, c) => w * Math.Pow(c, k)).Sum();
            var integral = Integral(s => Math.Exp(-x * (1 - s)) * Math.Pow(s, k));
            Assert.InRange(sum, integral - 1e-11, integral + 1e-11);
        }

        for (var stage = 1; stage < 3; stage++)
        {
            var c = times[stage];
            var decay = c * Integral(s => Math.Exp(-x * c * (1 - s)));
            Assert.InRange(weights.Stage(stage).ToArray().Sum(), decay - 1e-11, decay + 1e-11);
        }

        Assert.InRange(weights.Error.ToArray().Sum(), -1e-15, 1e-15);
    }

    [Fact]
    public void Set_NegativePace_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new DrawnWeights().Set(-0.1));

    [Theory]
    [InlineData(0.1)]
    [InlineData(2)]
    [InlineData(400)]
    public void Step_BalanceMovesInAParabola_IsExactWhateverThePace(double pace)
    {
        const double End = 0.3;
        // u' = p (b − u) with b = 1 + t + t² has u = b − (1 + 2t)/p + 2/p² and a rest that decays.
        static double Balance(double t) => 1 + t + (t * t);
        double Slow(double t) => Balance(t) - ((1 + (2 * t)) / pace) + (2 / pace / pace);
        var equations = new Equations(
            1,
            1,
            (t, u, rate) => rate[0] = Vector512.Create(pace) * (Vector512.Create(Balance(t)) - u[0])
        )
        {
            Drawn = [0],
            Pace = pace,
        };
        Vector512<double>[] state = [Vector512.Create(5.0)];
        new LockStepIntegrator(equations, ButcherTableau.BogackiShampine).Step(state, 0, End);
        var exact = Slow(End) + ((5 - Slow(0)) * Math.Exp(-pace * End));
        Assert.Equal(exact, state[0][3], 1e-10);
    }

    [Theory]
    [InlineData(5, 5)]
    [InlineData(5, 4)]
    [InlineData(5, 7)]
    public void FixedSteps_Halved_GainThirdOrderAlsoIfThePaceIsNotTheTrueOne(
        double pace,
        double told
    )
    {
        var coarse = ErrorOfCoupled(pace, told, 160);
        var fine = ErrorOfCoupled(pace, told, 320);
        Assert.InRange(Math.Log2(coarse / fine), 2.75, 3.25);
    }

    [Fact]
    public void Advance_FastPace_TakesFarFewerStepsThanWithoutKnowing()
    {
        var (told, known) = Run(200, tolerance: 1e-4, drawn: true);
        var (_, unknown) = Run(200, tolerance: 1e-4, drawn: false);
        Assert.True(known * 5 < unknown, $"{known} against {unknown}");
        // The state lags its balance cos t by 1/pace: cos t + sin t/pace, up to the square of that.
        Assert.Equal(Math.Cos(6) + (Math.Sin(6) / 200), told, 1e-3);
    }

    [Fact]
    public void Advance_MethodWithoutSuchWeights_GoesOnAsBefore()
    {
        var equations = new Equations(1, 1e-8, (_, u, rate) => rate[0] = -u[0])
        {
            Drawn = [0],
            Pace = 1,
        };
        Vector512<double>[] state = [Vector512.Create(1.0)];
        new LockStepIntegrator(equations, ButcherTableau.DormandPrince).Advance(
            state,
            0,
            1,
            0.1,
            1
        );
        Assert.Equal(Math.Exp(-1), state[0][0], 1e-6);
    }

    private static (double State, long Steps) Run(double pace, double tolerance, bool drawn)
    {
        var equations = new Equations(
            1,
            tolerance,
            (t, u, rate) =>
                rate[0] = Vector512.Create(pace) * (Vector512.Create(Math.Cos(t)) - u[0])
        )
        {
            Drawn = drawn ? [0] : [],
            Pace = pace,
        };
        Vector512<double>[] state = [Vector512<double>.One];
        var integrator = new LockStepIntegrator(equations, ButcherTableau.BogackiShampine);
        integrator.Advance(state, 0, 6, 0.01, 1);
        return (state[0][0], integrator.Steps);
    }

    // A drawn state and one that is not, each in the rate of the other, against very many steps.
    private static double ErrorOfCoupled(double pace, double told, int steps)
    {
        double After(int n)
        {
            var equations = new Equations(
                2,
                1,
                (t, u, rate) =>
                {
                    rate[0] = Vector512.Create(pace) * ((u[1] * u[1]) - u[0]);
                    rate[1] = Vector512.Create(Math.Cos(3 * t)) - (u[0] * u[1]);
                }
            )
            {
                Drawn = [0],
                Pace = told,
            };
            Vector512<double>[] state = [Vector512.Create(0.2), Vector512.Create(1.5)];
            var integrator = new LockStepIntegrator(equations, ButcherTableau.BogackiShampine);
            for (var i = 0; i < n; i++)
            {
                integrator.Step(state, 2.0 * i / n, 2.0 / n);
            }

            return state[0][0];
        }

        return Math.Abs(After(steps) - After(4000));
    }

    // Simpson's rule, exact to far below 1e-11 for what is asked here.
    private static double Integral(Func<double, double> f)
    {
        const int Halves = 20_000;
        var sum = f(0) + f(1);
        for (var i = 1; i < Halves; i++)
        {
            sum += f((double)i / Halves) * (i % 2 == 1 ? 4 : 2);
        }

        return sum / (3 * Halves);
    }

    private static Func<double, double, bool> Near(double tolerance) =>
        (a, b) => Math.Abs(a - b) <= tolerance;
}
