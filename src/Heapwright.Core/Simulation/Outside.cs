namespace Heapwright.Core.Simulation;

/// <summary>The air outside, as the equations need it.</summary>
/// <param name="Air">°C.</param>
/// <param name="Ground">°C.</param>
/// <param name="Density">kg/m³ of moist air.</param>
/// <param name="VapourDensity">kg/m³.</param>
/// <param name="Humidity">kg of vapour per kg of dry air.</param>
/// <param name="Wind">m/s.</param>
/// <param name="Rain">kg/m² a day.</param>
/// <param name="Sun">W/m².</param>
internal readonly record struct Outside(
    double Air,
    double Ground,
    double Density,
    double VapourDensity,
    double Humidity,
    double Wind,
    double Rain,
    double Sun
)
{
    public static Outside Of(WeatherMoment moment, double ground)
    {
        var kelvin = moment.Air + 273.15;
        var vapour = moment.Humidity * MoistAir.SaturationPressure(moment.Air);
        return new Outside(
            moment.Air,
            ground,
            MoistAir.Pressure
                / (MoistAir.DryGas * kelvin)
                * (1 - (0.378 * vapour / MoistAir.Pressure)),
            vapour / (MoistAir.VapourGas * kelvin),
            0.622 * vapour / (MoistAir.Pressure - vapour),
            moment.Wind,
            moment.Rain,
            moment.Sun
        );
    }
}
