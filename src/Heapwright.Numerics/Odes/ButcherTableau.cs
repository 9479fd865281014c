using System.Collections.Immutable;

namespace Heapwright.Numerics.Odes;

/// <summary>The coefficients of an explicit Runge–Kutta method, with an embedded one that estimates its error.</summary>
public sealed record ButcherTableau
{
    private ButcherTableau() { }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>The order of the result.</summary>
    public required int Order { get; init; }

    /// <summary>The order of the error estimate, that of the lower of the two methods.</summary>
    public required int ErrorOrder { get; init; }

    /// <summary>Shape [stage]: the times of the stages as shares of the step.</summary>
    public required ImmutableArray<double> Nodes { get; init; }

    /// <summary>Shape [stage][earlier stage]: the weights by which a stage is reached.</summary>
    public required ImmutableArray<ImmutableArray<double>> Stages { get; init; }

    /// <summary>Shape [stage]: the weights of the result.</summary>
    public required ImmutableArray<double> Weights { get; init; }

    /// <summary>Shape [stage]: the weights of the result less those of the embedded method.</summary>
    public required ImmutableArray<double> ErrorWeights { get; init; }

    /// <summary>Whether the last stage is the first of the next step.</summary>
    public bool LastIsFirst =>
        Nodes[^1] == 1 && Weights[^1] == 0 && Stages[^1].SequenceEqual(Weights[..^1]);

    /// <summary>Order 3 with an embedded order 2, the last stage being the first of the next step.</summary>
    /// <remarks>Source: Bogacki and Shampine 1989 (from memory; a test measures the order).</remarks>
    public static ButcherTableau BogackiShampine { get; } =
        new()
        {
            Name = "Bogacki–Shampine 3(2)",
            Order = 3,
            ErrorOrder = 2,
            Nodes = [0, 1.0 / 2, 3.0 / 4, 1],
            Stages =
            [
                [],
                [1.0 / 2],
                [0, 3.0 / 4],
                [2.0 / 9, 1.0 / 3, 4.0 / 9],
            ],
            Weights = [2.0 / 9, 1.0 / 3, 4.0 / 9, 0],
            ErrorWeights = [-5.0 / 72, 1.0 / 12, 1.0 / 9, -1.0 / 8],
        };

    /// <summary>Order 2 with an embedded order 1.</summary>
    /// <remarks>Source: Heun's method with Euler's (from memory; a test measures the order).</remarks>
    public static ButcherTableau HeunEuler { get; } =
        new()
        {
            Name = "Heun–Euler 2(1)",
            Order = 2,
            ErrorOrder = 1,
            Nodes = [0, 1],
            Stages =
            [
                [],
                [1],
            ],
            Weights = [1.0 / 2, 1.0 / 2],
            ErrorWeights = [-1.0 / 2, 1.0 / 2],
        };

    /// <summary>Order 5 with an embedded order 4, the last stage being the first of the next step.</summary>
    /// <remarks>Source: Dormand and Prince 1980 (from memory; a test measures the order).</remarks>
    public static ButcherTableau DormandPrince { get; } =
        new()
        {
            Name = "Dormand–Prince 5(4)",
            Order = 5,
            ErrorOrder = 4,
            Nodes = [0, 1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9, 1, 1],
            Stages =
            [
                [],
                [1.0 / 5],
                [3.0 / 40, 9.0 / 40],
                [44.0 / 45, -56.0 / 15, 32.0 / 9],
                [19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729],
                [9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656],
                [35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84],
            ],
            Weights = [35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84, 0],
            ErrorWeights =
            [
                71.0 / 57600,
                0,
                -71.0 / 16695,
                71.0 / 1920,
                -17253.0 / 339200,
                22.0 / 525,
                -1.0 / 40,
            ],
        };
}
