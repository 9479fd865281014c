using System.Runtime.Intrinsics;
using Air = (
    System.Runtime.Intrinsics.Vector512<double> Celsius,
    System.Runtime.Intrinsics.Vector512<double> Density,
    System.Runtime.Intrinsics.Vector512<double> VapourDensity,
    System.Runtime.Intrinsics.Vector512<double> Humidity
);

namespace Heapwright.Core.Simulation;

/// <summary>The air outside, as the equations need it; vectors have the shape [lane].</summary>
/// <param name="Air">°C.</param>
/// <param name="Ground">°C.</param>
/// <param name="Density">kg/m³ of moist air.</param>
/// <param name="VapourDensity">kg/m³.</param>
/// <param name="Humidity">kg of vapour per kg of dry air.</param>
/// <param name="Wind">m/s.</param>
/// <param name="Rain">kg/m² a day.</param>
/// <param name="Sun">W/m².</param>
internal readonly record struct Outside(
    Vector512<double> Air,
    double Ground,
    Vector512<double> Density,
    Vector512<double> VapourDensity,
    Vector512<double> Humidity,
    double Wind,
    double Rain,
    double Sun
)
{
    /// <summary>The air of a moment.</summary>
    /// <param name="moment">The weather.</param>
    /// <param name="ground">°C.</param>
    /// <param name="offset">Shape [lane]: by how much the air of a member lies above the weather, K.</param>
    public static Outside Of(WeatherMoment moment, double ground, Vector512<double> offset)
    {
        // In most runs the weather is one for all, and so are all figures of it.
        var (air, density, vapourDensity, humidity) = Vector512.EqualsAll(
            offset,
            Vector512<double>.Zero
        )
            ? One(moment.Air, moment.Humidity)
            : Each(V(moment.Air) + offset, moment.Humidity);
        return new Outside(
            air,
            ground,
            density,
            vapourDensity,
            humidity,
            moment.Wind,
            moment.Rain,
            moment.Sun
        );
    }

    private static Air One(double celsius, double saturation)
    {
        var kelvin = celsius + 273.15;
        var vapour = saturation * MoistAir.SaturationPressure(celsius);
        return (
            V(celsius),
            V(
                MoistAir.Pressure
                    / (MoistAir.DryGas * kelvin)
                    * (1 - (0.378 * vapour / MoistAir.Pressure))
            ),
            V(vapour / (MoistAir.VapourGas * kelvin)),
            V(0.622 * vapour / (MoistAir.Pressure - vapour))
        );
    }

    private static Air Each(Vector512<double> celsius, double saturation)
    {
        var kelvin = celsius + V(273.15);
        var vapour = V(saturation) * MoistAir.SaturationPressure(celsius);
        var pressure = V(MoistAir.Pressure);
        return (
            celsius,
            pressure / (V(MoistAir.DryGas) * kelvin) * (V(1) - (V(0.378) * vapour / pressure)),
            vapour / (V(MoistAir.VapourGas) * kelvin),
            V(0.622) * vapour / (pressure - vapour)
        );
    }

    private static Vector512<double> V(double value) => Vector512.Create(value);
}
