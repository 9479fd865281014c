namespace Heapwright.Core.Mixtures;

/// <summary>How much of a heap's volume is air, and what is left of it when soft matter has slumped.</summary>
public static class AirSpace
{
    /// <summary>Particle density of organic matter, kg/m³.</summary>
    public const double OrganicDensity = 1600;

    /// <summary>Particle density of ash, kg/m³.</summary>
    public const double AshDensity = 2500;

    /// <summary>Density of water, kg/m³.</summary>
    public const double WaterDensity = 1000;

    /// <summary>
    /// The share of a heap's volume that must be stiff pieces for them to carry the rest; with less the soft matter
    /// slumps in proportion.
    /// </summary>
    /// <remarks>Common practice, no source: a quarter to a third of the volume; the upper end is used here.</remarks>
    public const double StiffShareThatCarries = 1.0 / 3;

    /// <summary>Litres taken up by water, organic matter and ash.</summary>
    /// <param name="matter">The balance, kg.</param>
    public static double SolidAndWaterVolume(MassBalance matter) =>
        1000
        * (
            (matter.Water / WaterDensity)
            + ((matter.DryMass - matter.Ash) / OrganicDensity)
            + (matter.Ash / AshDensity)
        );

    /// <summary>
    /// Free air space: 1 − (water/1000 + organic/1600 + ash/2500)/volume, in percent of the volume. Below 0 means
    /// that the matter does not fit into the volume as stated: water stands or runs off.
    /// </summary>
    /// <param name="matter">The balance, kg.</param>
    /// <param name="volume">Litres of the heap, above 0.</param>
    /// <returns>Percent of the volume.</returns>
    /// <remarks>Source: Van Ginkel et al. 1999, Richard et al. 2004 (from memory).</remarks>
    public static double FreePercent(MassBalance matter, double volume) =>
        100 * (1 - (SolidAndWaterVolume(matter) / volume));

    /// <summary>
    /// The volume of the lower half after two days, brought to the whole: soft matter slumps to its unsupported
    /// volume as far as stiff pieces do not carry it; never below the volume of water and solids.
    /// </summary>
    /// <param name="matter">The balance; its stiff and unsupported volumes are used.</param>
    /// <param name="filledVolume">Litres after mixing.</param>
    /// <returns>Litres.</returns>
    /// <remarks>An estimate of our own: linear between no support and <see cref="StiffShareThatCarries"/>.</remarks>
    public static double SettledVolume(MassBalance matter, double filledVolume)
    {
        var carried = Math.Min(1, matter.StiffVolume / matter.LooseVolume / StiffShareThatCarries);
        var unsupported = matter.UnsupportedVolume / matter.LooseVolume;
        var left = unsupported + ((1 - unsupported) * carried);
        return Math.Max(filledVolume * left, Math.Min(filledVolume, SolidAndWaterVolume(matter)));
    }
}
