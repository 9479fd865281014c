namespace Heapwright.Core.Mixtures;

/// <summary>
/// The aims a mixture is judged by unless the asker sets others. They score and advise; good heaps lie outside them.
/// </summary>
public static class Aims
{
    /// <summary>C:N, preferred range (Cooperband 2002, Table 1, printed).</summary>
    public static Aim CarbonNitrogen { get; } =
        new("carbon_nitrogen_ratio", 25, 35, "cooperband2002");

    /// <summary>C:N, acceptable range (Cooperband 2002, Table 1, printed).</summary>
    public static Aim CarbonNitrogenFine { get; } =
        new("carbon_nitrogen_ratio", 20, 40, "cooperband2002");

    /// <summary>
    /// Available C:N: the preferred and acceptable ranges times 0.6, the share of carbon that rots in soft mixed
    /// garden matter with 8 % lignin in its volatile solids (0.83 − 0.028 × 8, Chandler 1980); derived.
    /// </summary>
    public static Aim AvailableCarbonNitrogen { get; } =
        new("available_carbon_nitrogen_ratio", 15, 21, "own_derivation");

    /// <summary>The acceptable range of available C:N; derived as above.</summary>
    public static Aim AvailableCarbonNitrogenFine { get; } =
        new("available_carbon_nitrogen_ratio", 12, 24, "own_derivation");

    /// <summary>
    /// The highest C:N, all carbon counted, at which the carbon within reach may be judged in its place. The lignin rule
    /// leaves pure softwood next to no carbon, so that its few grams of nitrogen would seem plenty; it stays cold.
    /// </summary>
    /// <remarks>
    /// An estimate: equal barrows of coarse chips and grass (about 74) heat, and so do two to one (107); chips alone (247)
    /// do not.
    /// </remarks>
    public const double HighestRatioOfWood = 150;

    /// <summary>Moisture, preferred range (The Composting Handbook 2022, printed).</summary>
    public static Aim Moisture { get; } =
        new("moisture_pct_wb", 50, 60, "composting_handbook_2022");

    /// <summary>Air after settling (Technical Note 24, printed: 35 to 60 good); a loose garden mix has no upper limit.</summary>
    public static Aim SettledAir { get; } =
        new("free_air_space_settled_pct", 35, null, "technical_note_24");

    /// <summary>Air at the filled volume (Technical Note 24, printed).</summary>
    public static Aim Air { get; } = new("free_air_space_pct", 35, null, "technical_note_24");

    /// <summary>A quarter of the volume stiff enough to hold air (common practice, no source).</summary>
    public static Aim StiffShare { get; } = new("stiff_share_pct", 25, null, "common_practice");

    /// <summary>Bulk density (NRAES-54, from memory).</summary>
    public static Aim BulkDensity { get; } = new("bulk_density_kg_m3", null, 640, "nraes54");

    /// <summary>
    /// The moisture aim for a mixture of this make: strawy and leafy mixtures carry more water than fine, dense ones.
    /// </summary>
    /// <param name="leafyShare">Share of the loose volume that is straw, hay or leaves, 0 to 1.</param>
    /// <param name="fineShare">Share of the loose volume that is fine, 0 to 1.</param>
    /// <remarks>Upper ends 65 and 58: common practice, no source.</remarks>
    public static Aim MoistureFor(double leafyShare, double fineShare) =>
        leafyShare >= 0.5 ? Moisture with { High = 65, Source = "common_practice" }
        : fineShare >= 0.5 ? Moisture with { High = 58, Source = "common_practice" }
        : Moisture;
}
