namespace Heapwright.App.Contract;

/// <summary>What must be known of a material to answer a question.</summary>
[Flags]
internal enum MaterialNeeds
{
    /// <summary>Nothing but what the unit needs.</summary>
    None = 0,

    /// <summary>Carbon and nitrogen.</summary>
    CarbonAndNitrogen = 1,

    /// <summary>Moisture.</summary>
    Moisture = 2,

    /// <summary>Density, whatever the unit.</summary>
    Volume = 4,

    /// <summary>Carbon, nitrogen and moisture.</summary>
    Balance = CarbonAndNitrogen | Moisture,
}
