namespace Heapwright.Core.Mixtures;

/// <summary>A mixture in one case: all its quantities as plain numbers; NaN where the volume is not known.</summary>
/// <param name="Matter">What it holds, water added included.</param>
/// <param name="FilledVolume">Litres after mixing.</param>
public readonly record struct MixtureState(MassBalance Matter, double FilledVolume)
{
    /// <summary>kg C per kg N; infinite without nitrogen.</summary>
    public double CarbonNitrogenRatio => Matter.Carbon / Matter.Nitrogen;

    /// <summary>kg C that lignin does not hold back per kg N.</summary>
    public double AvailableCarbonNitrogenRatio => Matter.AvailableCarbon / Matter.Nitrogen;

    /// <summary>% of wet mass.</summary>
    public double Moisture => 100 * Matter.Water / Matter.WetMass;

    /// <summary>kg/m³ at the filled volume.</summary>
    public double BulkDensity => 1000 * Matter.WetMass / FilledVolume;

    /// <summary>% of the filled volume.</summary>
    public double FreeAirSpace => AirSpace.FreePercent(Matter, FilledVolume);

    /// <summary>Litres after two days of settling.</summary>
    public double SettledVolume => AirSpace.SettledVolume(Matter, FilledVolume);

    /// <summary>% of the volume after two days of settling.</summary>
    public double FreeAirSpaceSettled => AirSpace.FreePercent(Matter, SettledVolume);

    /// <summary>% of the loose volume that is stiff enough to hold air.</summary>
    public double StiffShare => 100 * Matter.StiffVolume / Matter.LooseVolume;
}
