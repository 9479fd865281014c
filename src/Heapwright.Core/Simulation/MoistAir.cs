using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Heapwright.Numerics.Vectors;

namespace Heapwright.Core.Simulation;

/// <summary>Moist air at sea level.</summary>
public static class MoistAir
{
    /// <summary>Pressure, Pa.</summary>
    public const double Pressure = 101_325;

    /// <summary>Gas constant of dry air, J/kgK.</summary>
    public const double DryGas = 287.05;

    /// <summary>Gas constant of water vapour, J/kgK.</summary>
    public const double VapourGas = 461.5;

    /// <summary>Heat capacity of dry air, J/kgK.</summary>
    public const double DryHeat = 1006;

    /// <summary>Heat of evaporation at 0 °C, J/kg.</summary>
    public const double Evaporation = 2.501e6;

    /// <summary>Heat capacity of vapour, J/kgK.</summary>
    public const double VapourHeat = 1860;

    /// <summary>Saturation pressure over water, 610.94 exp(17.625 T/(T + 243.04)), Pa.</summary>
    /// <param name="celsius">°C, −40 to 100.</param>
    /// <remarks>Source: the Magnus formula with the constants of Alduchov and Eskridge 1996 (from memory).</remarks>
    public static double SaturationPressure(double celsius) =>
        610.94 * Math.Exp(17.625 * celsius / (celsius + 243.04));

    /// <summary>Saturation pressure over water, Pa.</summary>
    /// <param name="celsius">°C; outside −40 to 100 the bound is used.</param>
    /// <returns>Within 3e-5 of the Magnus formula (measured by a test): a polynomial of degree 6 for its logarithm.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> SaturationPressure(Vector512<double> celsius)
    {
        var t = (celsius - Vector512.Create(30.0)) * Vector512.Create(1 / 70.0);
        t = Vector512.MinNative(
            Vector512.MaxNative(t, Vector512.Create(-1.0)),
            Vector512.Create(1.0)
        );
        var p = Step(Vector512.Create(-0.007356338962562033), t, 0.0282144214816755);
        p = Step(p, t, -0.0971787731185503);
        p = Step(p, t, 0.37977200203269945);
        p = Step(p, t, -1.4877646170944112);
        p = Step(p, t, 5.8028624368240616);
        p = Step(p, t, 12.048712160918393);
        return VectorMath.Exp2(p);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Step(Vector512<double> p, Vector512<double> t, double c) =>
        Vector512.FusedMultiplyAdd(p, t, Vector512.Create(c));
}
