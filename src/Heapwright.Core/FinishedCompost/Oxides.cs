namespace Heapwright.Core.FinishedCompost;

/// <summary>Phosphorus and potassium as the element and as the oxide that fertiliser labels name.</summary>
/// <remarks>Factors as printed to four places: P = 0.4364 P2O5, K = 0.8301 K2O.</remarks>
public static class Oxides
{
    /// <summary>kg of P in a kg of P2O5.</summary>
    public const double PhosphorusInP2O5 = 0.4364;

    /// <summary>kg of K in a kg of K2O.</summary>
    public const double PotassiumInK2O = 0.8301;

    /// <summary>mg of CO2 for each mg of carbon in it: 44.009/12.011.</summary>
    public const double CarbonDioxidePerCarbon = 44.009 / 12.011;

    /// <summary>mg of O2 in a mmol of it.</summary>
    public const double MilligramsPerMillimoleOxygen = 31.998;
}
