using System.Runtime.Intrinsics;
using Heapwright.Numerics.Vectors;

namespace Heapwright.Numerics.Tests.Vectors;

/// <summary>The errors that the docstrings state, measured over whole ranges against the functions of Math.</summary>
public class VectorMathTests
{
    private const int Points = 400_000;
    private const double Ulp = 2.220446049250313e-16;

    [Theory]
    [InlineData(-1, 1)]
    [InlineData(-30, 30)]
    [InlineData(-1000, 1000)]
    public void Exp2_WholeRange_IsWithin6e11(double low, double high) =>
        Assert.InRange(
            Worst(low, high, VectorMath.Exp2, (x, y) => Math.Abs((y / Math.Pow(2, x)) - 1)),
            0,
            6e-11
        );

    [Fact]
    public void Exp2_WholeNumbers_AreWithin6e11AndRise()
    {
        var before = 0.0;
        for (var n = -1000; n <= 1000; n++)
        {
            var y = At(VectorMath.Exp2, n);
            Assert.InRange((y / Math.ScaleB(1, n)) - 1, -6e-11, 6e-11);
            Assert.True(y > before);
            before = y;
        }
    }

    [Theory]
    [InlineData(1000.5, 1000)]
    [InlineData(1e300, 1000)]
    [InlineData(double.PositiveInfinity, 1000)]
    [InlineData(-1000.5, -1000)]
    [InlineData(-1e300, -1000)]
    [InlineData(double.NegativeInfinity, -1000)]
    public void Exp2_BeyondTheBound_IsTheBound(double x, int bound) =>
        Assert.InRange((At(VectorMath.Exp2, x) / Math.ScaleB(1, bound)) - 1, -6e-11, 6e-11);

    [Theory]
    [InlineData(-1, 1)]
    [InlineData(-690, 690)]
    public void Exp_WholeRange_IsWithinItsBound(double low, double high) =>
        Assert.InRange(
            Worst(
                low,
                high,
                VectorMath.Exp,
                (x, y) => Math.Abs((y / Math.Exp(x)) - 1) / (6e-11 + (2e-16 * Math.Abs(x)))
            ),
            0,
            1
        );

    [Theory]
    [InlineData(-2, 2)]
    [InlineData(-1000, 1000)]
    public void Log2_WholeRange_IsWithin1e13AndRounding(double low, double high) =>
        Assert.InRange(
            Worst(
                low,
                high,
                e => VectorMath.Log2(Map(e, v => Math.Pow(2, v))),
                (e, y) =>
                {
                    var exact = Math.Log2(Math.Pow(2, e));
                    return Math.Abs(y - exact) / (1e-13 + (Ulp * Math.Abs(exact)));
                }
            ),
            0,
            1
        );

    [Fact]
    public void Log2_PowersOfTwo_AreWhole()
    {
        for (var n = -1022; n <= 1023; n++)
        {
            Assert.Equal(n, At(VectorMath.Log2, Math.ScaleB(1, n)));
        }
    }

    [Fact]
    public void Log2_AroundTheDividingLine_HasNoJump()
    {
        // The mantissa is taken from √½ to √2, so the worst places are just below and above √2.
        foreach (
            var x in new[]
            {
                Math.BitDecrement(Math.Sqrt(2)),
                Math.Sqrt(2),
                Math.BitIncrement(Math.Sqrt(2)),
            }
        )
        {
            Assert.InRange(At(VectorMath.Log2, x), 0.5 - 1e-13, 0.5 + 1e-13);
        }
    }

    [Theory]
    [InlineData(0.3)]
    [InlineData(1)]
    [InlineData(-2.5)]
    [InlineData(17)]
    [InlineData(-90)]
    public void Pow_WholeRange_IsWithinItsBound(double exponent)
    {
        // |y log2 x| stays below 1000.
        var reach = Math.Min(1000, 999 / Math.Abs(exponent));
        Assert.InRange(
            Worst(
                -reach,
                reach,
                e => VectorMath.Pow(Map(e, v => Math.Pow(2, v)), Vector512.Create(exponent)),
                (e, y) =>
                    Math.Abs((y / Math.Pow(Math.Pow(2, e), exponent)) - 1)
                    / (6e-11 + (1e-13 * Math.Abs(exponent)))
            ),
            0,
            1
        );
    }

    [Theory]
    [InlineData(-5, 5)]
    [InlineData(-800, 800)]
    public void Logistic_WholeRange_IsWithin2e11(double low, double high) =>
        Assert.InRange(
            Worst(low, high, VectorMath.Logistic, (x, y) => Math.Abs(y - (1 / (1 + Math.Exp(-x))))),
            0,
            2e-11
        );

    [Theory]
    [InlineData(double.PositiveInfinity, 1)]
    [InlineData(double.NegativeInfinity, 0)]
    public void Logistic_Infinity_IsABound(double x, double bound) =>
        Assert.InRange(At(VectorMath.Logistic, x), bound - 2e-11, bound + 2e-11);

    [Theory]
    [InlineData(-3, 3)]
    [InlineData(-300, 60)]
    public void SmoothMinOne_WholeRange_IsWithin1e15(double low, double high) =>
        Assert.InRange(
            Worst(
                low,
                high,
                e => VectorMath.SmoothMinOne(Map(e, v => Math.Pow(10, v))),
                (e, y) =>
                {
                    var x = Math.Pow(10, e);
                    // Another form: its logarithm is small wherever x is far from 1.
                    var exact =
                        x <= 1
                            ? x * Math.Exp(-0.25 * Math.Log(1 + (x * x * x * x)))
                            : Math.Exp(-0.25 * Math.Log(1 + Math.Pow(x, -4)));
                    return Math.Abs((y / exact) - 1);
                }
            ),
            0,
            1e-15
        );

    [Fact]
    public void SmoothMinOne_KnownPlaces_AreExact()
    {
        Assert.Equal(0, At(VectorMath.SmoothMinOne, 0));
        // 2^−¼
        Assert.InRange(At(VectorMath.SmoothMinOne, 1), 0.8408964152537144, 0.8408964152537147);
        Assert.Equal(1, At(VectorMath.SmoothMinOne, 1e60));
    }

    [Fact]
    public void AnyFunction_NotANumber_GivesNotANumberOrABound()
    {
        AssertNaNOr(At(VectorMath.Exp2, double.NaN), Math.ScaleB(1, -1000), Math.ScaleB(1, 1000));
        AssertNaNOr(At(VectorMath.Exp, double.NaN), Math.ScaleB(1, -1000), Math.ScaleB(1, 1000));
        AssertNaNOr(At(VectorMath.Logistic, double.NaN), 0, 1);
        Assert.True(double.IsNaN(At(VectorMath.SmoothMinOne, double.NaN)));
    }

    private static void AssertNaNOr(double value, double low, double high) =>
        Assert.True(
            double.IsNaN(value)
                || Math.Abs(value - low) <= 6e-11 * low
                || Math.Abs(value - high) <= 6e-11 * high,
            value.ToString("R", System.Globalization.CultureInfo.InvariantCulture)
        );

    // The greatest error over evenly spaced points; the eight lanes hold neighbours.
    private static double Worst(
        double low,
        double high,
        Func<Vector512<double>, Vector512<double>> function,
        Func<double, double, double> error
    )
    {
        var worst = 0.0;
        for (var i = 0; i <= Points; i += 8)
        {
            var x = Vector512.Create(0.0);
            for (var lane = 0; lane < 8; lane++)
            {
                x = x.WithElement(lane, low + ((high - low) * Math.Min(i + lane, Points) / Points));
            }

            var y = function(x);
            for (var lane = 0; lane < 8; lane++)
            {
                // Max keeps what is not a number.
                worst = Math.Max(worst, error(x[lane], y[lane]));
            }
        }

        return worst;
    }

    private static double At(Func<Vector512<double>, Vector512<double>> function, double x) =>
        function(Vector512.Create(x))[5];

    private static Vector512<double> Map(Vector512<double> x, Func<double, double> f) =>
        Vector512.Create(f(x[0]), f(x[1]), f(x[2]), f(x[3]), f(x[4]), f(x[5]), f(x[6]), f(x[7]));
}
