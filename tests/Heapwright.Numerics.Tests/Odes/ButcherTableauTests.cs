using System.Runtime.Intrinsics;
using Heapwright.Numerics.Odes;

namespace Heapwright.Numerics.Tests.Odes;

/// <summary>Order conditions, and the order measured on a nonlinear problem with a known answer.</summary>
public class ButcherTableauTests
{
    private const double End = 2;

    public static TheoryData<string> Methods => ["heun", "bogacki", "dormand"];

    [Fact]
    public void RootedTrees_UpToSix_Are1124920()
    {
        // Number of rooted trees (Hairer, Nørsett and Wanner, volume I, table II.2.1; from memory).
        Assert.Equal(
            [1, 1, 2, 4, 9, 20],
            Enumerable.Range(1, 6).Select(n => RootedTree.OfOrder(n).Count)
        );
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void Weights_OrderConditions_HoldToTheOrderAndNoFurther(string name)
    {
        var tableau = Of(name);
        AssertOrder(tableau, tableau.Weights, tableau.Order);
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void EmbeddedWeights_OrderConditions_HoldToTheirOrderAndNoFurther(string name)
    {
        var tableau = Of(name);
        double[] embedded = [.. tableau.Weights.Zip(tableau.ErrorWeights, (b, e) => b - e)];
        AssertOrder(tableau, embedded, tableau.ErrorOrder);
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void Nodes_OfEachStage_AreTheSumsOfItsWeights(string name)
    {
        var tableau = Of(name);
        Assert.Equal(tableau.Nodes.Length, tableau.Stages.Length);
        Assert.Equal(tableau.Nodes.Length, tableau.Weights.Length);
        Assert.Equal(tableau.Nodes.Length, tableau.ErrorWeights.Length);
        for (var s = 0; s < tableau.Nodes.Length; s++)
        {
            Assert.Equal(s, tableau.Stages[s].Length);
            Assert.InRange(tableau.Stages[s].Sum() - tableau.Nodes[s], -2e-15, 2e-15);
        }
    }

    [Theory]
    [InlineData("heun", false)]
    [InlineData("bogacki", true)]
    [InlineData("dormand", true)]
    public void LastIsFirst_Method_IsAsPublished(string name, bool expected) =>
        Assert.Equal(expected, Of(name).LastIsFirst);

    [Theory]
    [InlineData("heun", 2, 64)]
    [InlineData("bogacki", 3, 64)]
    [InlineData("dormand", 5, 96)]
    public void FixedSteps_Halved_GainTheOrder(string name, int order, int steps)
    {
        var tableau = Of(name);
        var coarse = ErrorsAtTheEnd(tableau, steps);
        var fine = ErrorsAtTheEnd(tableau, 2 * steps);
        for (var lane = 0; lane < 8; lane++)
        {
            Assert.InRange(Math.Log2(coarse[lane] / fine[lane]), order - 0.25, order + 0.25);
        }
    }

    [Theory]
    [InlineData("heun", 1)]
    [InlineData("bogacki", 2)]
    [InlineData("dormand", 4)]
    public void ErrorEstimate_StepHalved_FallsByItsOrderAndOne(string name, int order)
    {
        var tableau = Of(name);
        // Small enough to be in the limit, large enough to stay above rounding.
        var step = order == 4 ? 0.04 : 0.01;
        var whole = EstimateOfOneStep(tableau, step);
        var half = EstimateOfOneStep(tableau, step / 2);
        Assert.InRange(Math.Log2(whole / half), order + 1 - 0.15, order + 1 + 0.15);
    }

    private static void AssertOrder(
        ButcherTableau tableau,
        IReadOnlyList<double> weights,
        int order
    )
    {
        for (var n = 1; n <= order; n++)
        {
            foreach (var tree in RootedTree.OfOrder(n))
            {
                Assert.InRange(tree.Residual(tableau, weights), -1e-14, 1e-14);
            }
        }

        Assert.Contains(
            RootedTree.OfOrder(order + 1),
            t => Math.Abs(t.Residual(tableau, weights)) > 1e-5
        );
    }

    private static ButcherTableau Of(string name) =>
        name switch
        {
            "heun" => ButcherTableau.HeunEuler,
            "bogacki" => ButcherTableau.BogackiShampine,
            _ => ButcherTableau.DormandPrince,
        };

    // y′ = −2 t y², whose answer is y = 1/(1/y(0) + t²): nonlinear, and it depends on time. A start in each lane.
    private static Equations Problem() =>
        new(1, 1, (t, y, rate) => rate[0] = Vector512.Create(-2 * t) * y[0] * y[0]);

    private static double StartOf(int lane) => 0.5 + (0.2 * lane);

    private static double ExactOf(int lane, double t) => 1 / ((1 / StartOf(lane)) + (t * t));

    private static double[] ErrorsAtTheEnd(ButcherTableau tableau, int steps)
    {
        var integrator = new LockStepIntegrator(Problem(), tableau);
        var state = StateAt(0);
        for (var i = 0; i < steps; i++)
        {
            integrator.Step(state, End * i / steps, End / steps);
        }

        return
        [
            .. Enumerable.Range(0, 8).Select(lane => Math.Abs(state[0][lane] - ExactOf(lane, End))),
        ];
    }

    private static double EstimateOfOneStep(ButcherTableau tableau, double step) =>
        new LockStepIntegrator(Problem(), tableau).Step(StateAt(0.3), 0.3, step);

    private static Vector512<double>[] StateAt(double t)
    {
        var y = Vector512<double>.Zero;
        for (var lane = 0; lane < 8; lane++)
        {
            y = y.WithElement(lane, ExactOf(lane, t));
        }

        return [y];
    }
}
