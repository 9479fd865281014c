using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heapwright.Numerics.Vectors;

/// <summary>Elementary functions on eight numbers at once. Each states its error; NaN in gives NaN or a bound out.</summary>
public static class VectorMath
{
    private const double Log2E = 1.4426950408889634;

    // 1.5 · 2^52: adding it to a number below 2^51 leaves the rounded number in the low bits of the sum.
    private const double Rounder = 6755399441055744.0;

    /// <summary>2 to the power x.</summary>
    /// <param name="x">Any numbers; below −1000 and above 1000 the bound is used.</param>
    /// <returns>Relative error at most 6e-11 (measured over the whole range by a test).</returns>
    /// <remarks>Chebyshev interpolation of degree 7 on −½ to ½; the whole part goes into the exponent bits.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> Exp2(Vector512<double> x)
    {
        x = Vector512.MinNative(
            Vector512.MaxNative(x, Vector512.Create(-1000.0)),
            Vector512.Create(1000.0)
        );
        var shifted = x + Vector512.Create(Rounder);
        var f = x - (shifted - Vector512.Create(Rounder));
        var p = Fma(Vector512.Create(1.5310101775576584e-05), f, 0.00015469732510017215);
        p = Fma(p, f, 0.0013333450483367518);
        p = Fma(p, f, 0.009618025601282222);
        p = Fma(p, f, 0.05550410941295781);
        p = Fma(p, f, 0.24022651213607954);
        p = Fma(p, f, 0.6931471805459091);
        p = Fma(p, f, 0.999999999959631);
        return (p.AsInt64() + (shifted.AsInt64() << 52)).AsDouble();
    }

    /// <summary>e to the power x.</summary>
    /// <param name="x">Any numbers; the result is bounded by 2^±1000.</param>
    /// <returns>Relative error at most 6e-11 + 2e-16·|x|.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> Exp(Vector512<double> x) => Exp2(x * Vector512.Create(Log2E));

    /// <summary>The logarithm to base 2.</summary>
    /// <param name="x">Normal positive numbers; what comes out for others has no meaning.</param>
    /// <returns>Absolute error at most 1e-13 plus rounding.</returns>
    /// <remarks>The exponent, and an odd series in (m−1)/(m+1) for the mantissa m in √½ to √2.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> Log2(Vector512<double> x)
    {
        var bits = x.AsInt64();
        // √½ as the dividing line: its bit pattern is taken off before the exponent is read.
        var offset = bits - Vector512.Create(0x3FE6A09E667F3BCDL);
        var exponent = offset >> 52;
        var m = (bits - (exponent << 52)).AsDouble();
        var s = (m - Vector512<double>.One) / (m + Vector512<double>.One);
        var z = s * s;
        var p = Fma(Vector512.Create(0.28376679232391905), z, 0.3198300400501298);
        p = Fma(p, z, 0.41221164611479055);
        p = Fma(p, z, 0.5770779093232212);
        p = Fma(p, z, 0.9617966942990784);
        p = Fma(p, z, 2.885390081777545);
        return Vector512.FusedMultiplyAdd(p, s, Vector512.ConvertToDouble(exponent));
    }

    /// <summary>x to the power y.</summary>
    /// <param name="x">Normal positive numbers.</param>
    /// <param name="y">Exponents with |y log2 x| below 1000.</param>
    /// <returns>Relative error at most 6e-11 + 1e-13·|y|.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> Pow(Vector512<double> x, Vector512<double> y) =>
        Exp2(y * Log2(x));

    /// <summary>1/(1+e^−x), the saturation that runs from 0 to 1.</summary>
    /// <param name="x">Any numbers.</param>
    /// <returns>Absolute error at most 2e-11.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> Logistic(Vector512<double> x) =>
        Vector512<double>.One / (Vector512<double>.One + Exp2(x * Vector512.Create(-Log2E)));

    /// <summary>
    /// The smaller of 1 and x without a corner: x/(1+x⁴)^¼, which is x for small and 1 for large x and 0.84 at 1.
    /// </summary>
    /// <param name="x">Numbers from 0 to 1e60.</param>
    /// <returns>Relative error at most 1e-15.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> SmoothMinOne(Vector512<double> x)
    {
        var square = x * x;
        return x
            / Vector512.Sqrt(
                Vector512.Sqrt(Vector512.FusedMultiplyAdd(square, square, Vector512<double>.One))
            );
    }

    /// <summary>a·b + c with one rounding.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Fma(Vector512<double> a, Vector512<double> b, double c) =>
        Vector512.FusedMultiplyAdd(a, b, Vector512.Create(c));
}
