namespace Heapwright.Numerics.Odes;

/// <summary>
/// The weights of the Bogacki–Shampine method for a state that is drawn to a balance at a constant pace, u' = p (b − u):
/// the pull p (b − u₀) of each stage, u₀ being the state where the step began, is weighed so that the decay is exact. The
/// order stays 3, a state at its balance stays there, and without a pace they are the weights of the method itself.
/// </summary>
/// <remarks>
/// Source: the conditions of order 3 for explicit exponential Runge–Kutta methods, Hochbruck and Ostermann 2005 (from
/// memory; a test measures the order). The estimate of the error is that of the method, less by the decay.
/// </remarks>
public sealed class DrawnWeights
{
    private const int Terms = 16;
    private const double Near = 0.5; // where the differences of the closed forms would lose digits

    private readonly double[][] stages =
    [
        [],
        new double[1],
        new double[2],
        new double[3],
    ];
    private readonly double[] error = new double[4];
    private double decay = double.NaN;

    /// <summary>The weights by which a stage is reached; those of the last stage are those of the result.</summary>
    /// <param name="stage">From 0.</param>
    /// <returns>Shape [earlier stage].</returns>
    public ReadOnlySpan<double> Stage(int stage) => stages[stage];

    /// <summary>Shape [stage]: the weights of the estimate of the error.</summary>
    public ReadOnlySpan<double> Error => error;

    /// <summary>Sets the weights.</summary>
    /// <param name="paceTimesStep">How far the decay goes within a step, at least 0.</param>
    public void Set(double paceTimesStep)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(paceTimesStep);
        if (paceTimesStep == decay)
        {
            return;
        }

        decay = paceTimesStep;
        const double Second = 1.0 / 2,
            Third = 3.0 / 4; // the times of the stages
        var (whole, second, third) = (
            Functions(decay),
            Functions(Second * decay),
            Functions(Third * decay)
        );
        // Σ w = φ1, Σ w c = φ2, Σ w c² = 2 φ3.
        var w2 = ((Third * whole.Two) - (2 * whole.Three)) / (Second * (Third - Second));
        var w3 = ((2 * whole.Three) - (Second * whole.Two)) / (Third * (Third - Second));
        stages[3][0] = whole.One - w2 - w3;
        stages[3][1] = w2;
        stages[3][2] = w3;
        // What the second stage is off by and what the third is off by cancel in the result.
        stages[2][1] =
            ((Third * Third * third.Two) + (w2 / w3 * Second * Second * second.Two)) / Second;
        stages[2][0] = (Third * third.One) - stages[2][1];
        stages[1][0] = Second * second.One;
        for (var i = 0; i < error.Length; i++)
        {
            error[i] = ButcherTableau.BogackiShampine.ErrorWeights[i] * whole.One;
        }
    }

    // φ1 = (1 − e^−x)/x, φ2 = (1 − φ1)/x, φ3 = (½ − φ2)/x.
    private static (double One, double Two, double Three) Functions(double x)
    {
        if (x >= Near)
        {
            var one = (1 - Math.Exp(-x)) / x;
            var two = (1 - one) / x;
            return (one, two, (0.5 - two) / x);
        }

        // φ3 by its series, the others from it.
        var (term, sum) = (1.0 / 6, 0.0);
        for (var j = 0; j < Terms; j++)
        {
            sum += term;
            term *= -x / (j + 4);
        }

        var below = 0.5 - (x * sum);
        return (1 - (x * below), below, sum);
    }
}
