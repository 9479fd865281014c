namespace Heapwright.Core.Materials;

/// <summary>What is known of a material; the order is that of docs/nomenclature.md.</summary>
public enum MaterialProperty
{
    /// <summary>Nitrogen, % of dry mass.</summary>
    Nitrogen,

    /// <summary>Organic carbon, % of dry mass.</summary>
    Carbon,

    /// <summary>Water, % of wet mass.</summary>
    Moisture,

    /// <summary>Mass per volume as tipped loose into a barrow, kg/m³ wet.</summary>
    BulkDensity,

    /// <summary>Ash, % of dry mass.</summary>
    Ash,

    /// <summary>Lignin, % of dry mass.</summary>
    Lignin,

    /// <summary>Phosphorus (P, not P₂O₅), % of dry mass.</summary>
    Phosphorus,

    /// <summary>Potassium (K, not K₂O), % of dry mass.</summary>
    Potassium,

    /// <summary>What rots in the first hot days, % of dry mass.</summary>
    Fast,

    /// <summary>Pieces stiff enough to hold air spaces under load when wet, % of loose volume.</summary>
    StiffShare,

    /// <summary>Volume left after two warm wet days under load with nothing stiff mixed in, % of loose volume.</summary>
    UnsupportedVolume,
}
