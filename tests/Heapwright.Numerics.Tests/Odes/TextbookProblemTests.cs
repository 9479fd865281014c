using System.Runtime.Intrinsics;
using Heapwright.Numerics.Odes;
using V8 = System.Runtime.Intrinsics.Vector512<double>;

namespace Heapwright.Numerics.Tests.Odes;

/// <summary>Problems whose answers are known, by every method, with steps chosen by the error.</summary>
public class TextbookProblemTests
{
    private static readonly V8 LaneNumber = Vector512.Create(1.0, 2, 3, 4, 5, 6, 7, 8);

    public static TheoryData<string> Methods => ["heun", "bogacki", "dormand"];

    [Theory]
    [MemberData(nameof(Methods))]
    public void Decay_EveryLaneAtItsRate_FollowsTheExponential(string method)
    {
        var equations = new Equations(1, 1e-8, (_, y, rate) => rate[0] = -LaneNumber * y[0]);
        V8[] state = [V8.One];
        Advance(equations, method, state, 1);
        // e^−1, e^−2, … e^−8
        double[] exact =
        [
            0.36787944117144233,
            0.1353352832366127,
            0.049787068367863944,
            0.01831563888873418,
            0.006737946999085467,
            0.0024787521766663585,
            0.0009118819655545162,
            0.00033546262790251185,
        ];
        AssertNear(exact, state[0], 2e-7);
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void Oscillator_AfterThreeRounds_IsWhereItBegan(string method)
    {
        var equations = new Equations(
            2,
            1e-8,
            (_, y, rate) =>
            {
                rate[0] = y[1];
                rate[1] = -y[0];
            }
        );
        V8[] state = [V8.One, V8.Zero];
        Advance(equations, method, state, 6 * Math.PI);
        AssertNear(Same(1), state[0], 1e-5);
        AssertNear(Same(0), state[1], 1e-5);
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void Logistic_FromATenth_FollowsTheCurve(string method)
    {
        var equations = new Equations(1, 1e-8, (_, y, rate) => rate[0] = y[0] * (V8.One - y[0]));
        V8[] state = [Vector512.Create(0.1)];
        Advance(equations, method, state, 5);
        // 1/(1 + 9 e^−5)
        AssertNear(Same(0.9428256185740149), state[0], 2e-7);
    }

    [Theory]
    [InlineData("bogacki")]
    [InlineData("dormand")]
    public void Robertson_StiffKinetics_MeetsThePrintedAnswer(string method)
    {
        var equations = new Equations(
            3,
            1e-9,
            (_, y, rate) =>
            {
                var slow = Vector512.Create(0.04) * y[0];
                var back = Vector512.Create(1e4) * y[1] * y[2];
                var fast = Vector512.Create(3e7) * y[1] * y[1];
                rate[0] = back - slow;
                rate[1] = slow - back - fast;
                rate[2] = fast;
            }
        );
        V8[] state = [V8.One, V8.Zero, V8.Zero];
        Advance(equations, method, state, 0.4, 1e-4);
        // Robertson 1966 at t = 0.4 as solvers' manuals print it (from memory): 9.8517e-1, 3.3864e-5, 1.4794e-2.
        AssertNear(Same(0.98517), state[0], 5e-6);
        AssertNear(Same(3.3864e-5), state[1], 5e-9);
        AssertNear(Same(0.014794), state[2], 5e-7);
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void LotkaVolterra_ManyRounds_KeepsItsInvariant(string method)
    {
        var equations = new Equations(
            2,
            1e-9,
            (_, y, rate) =>
            {
                rate[0] = y[0] * (V8.One - y[1]);
                rate[1] = y[1] * (y[0] - V8.One);
            }
        );
        V8[] state = [Vector512.Create(2.0), V8.One];
        Advance(equations, method, state, 20);
        for (var lane = 0; lane < 8; lane++)
        {
            var (x, y) = (state[0][lane], state[1][lane]);
            // x − ln x + y − ln y = 3 − ln 2
            Assert.InRange(
                x - Math.Log(x) + y - Math.Log(y),
                2.3068528194400547 - 1e-5,
                2.3068528194400547 + 1e-5
            );
        }
    }

    [Fact]
    public void Methods_ChainOfReactions_ConserveTheSumToRounding()
    {
        foreach (var method in new[] { "heun", "bogacki", "dormand" })
        {
            var equations = new Equations(
                3,
                1e-5,
                (t, y, rate) =>
                {
                    var first = y[0] * y[0] * Vector512.Create(3 + Math.Sin(t));
                    var second = LaneNumber * y[1] * Vector512.Sqrt(y[1] + V8.One);
                    rate[0] = -first;
                    rate[1] = first - second;
                    rate[2] = second;
                }
            );
            V8[] state = [V8.One, Vector512.Create(0.5), V8.Zero];
            var integrator = Advance(equations, method, state, 30);
            Assert.True(integrator.Steps > 30);
            AssertNear(Same(1.5), state[0] + state[1] + state[2], 1e-13);
            Assert.True(state[2][0] > 1.4);
        }
    }

    private static LockStepIntegrator Advance(
        Equations equations,
        string method,
        V8[] state,
        double to,
        double firstStep = 0.01
    )
    {
        var integrator = new LockStepIntegrator(
            equations,
            method switch
            {
                "heun" => ButcherTableau.HeunEuler,
                "bogacki" => ButcherTableau.BogackiShampine,
                _ => ButcherTableau.DormandPrince,
            }
        );
        integrator.Advance(state, 0, to, firstStep, 1);
        return integrator;
    }

    private static double[] Same(double value) => [.. Enumerable.Repeat(value, 8)];

    private static void AssertNear(double[] expected, V8 actual, double tolerance)
    {
        for (var lane = 0; lane < 8; lane++)
        {
            Assert.InRange(actual[lane], expected[lane] - tolerance, expected[lane] + tolerance);
        }
    }
}
