using Heapwright.Core.Materials;

namespace Heapwright.Web.Showing;

/// <summary>The pattern by which a material is told apart in pictures, also without colour.</summary>
public static class MaterialLook
{
    /// <summary>All patterns, by name.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "grass",
        "green",
        "leaf",
        "straw",
        "wood",
        "scraps",
        "manure",
        "paper",
        "meal",
        "soil",
    ];

    /// <summary>The pattern of a material.</summary>
    /// <param name="material">The material; null where it is not known.</param>
    public static string Of(Material? material) =>
        material switch
        {
            null => "green",
            { Group: "grass", CountsAs: "green" } => "grass",
            { Group: "leaves" } => "leaf",
            { Group: "straw_hay" } => "straw",
            { Group: "woody" } => "wood",
            { Group: "kitchen" } => "scraps",
            { Group: "manure" } => "manure",
            { Group: "paper" } => "paper",
            { Group: "soil" or "mineral" } => "soil",
            { Kind: "woody" } => "wood",
            { Kind: "papery" } => "paper",
            { Kind: "manure" } => "manure",
            { Kind: "meal" or "seedy" } => "meal",
            { Kind: "fruity" } => "scraps",
            { Kind: "soily" } => "soil",
            { CountsAs: "structure" } => "wood",
            { CountsAs: "brown" } => "straw",
            _ => "green",
        };
}
