using System.Collections.Immutable;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using static Heapwright.App.Drawings.PatternMark;

namespace Heapwright.App.Drawings;

/// <summary>The tile that is repeated to fill a layer: a ground colour, an ink and marks that differ in shape.</summary>
/// <param name="Name">Its name in classes and custom properties, such as <c>straw</c>.</param>
/// <param name="Width">Width of the tile, in units of the picture.</param>
/// <param name="Height">Height of the tile.</param>
/// <param name="Ground">The ground colour, #rrggbb.</param>
/// <param name="Ink">The colour of the marks, #rrggbb.</param>
/// <param name="Marks">The marks.</param>
public sealed record PatternTile(
    string Name,
    double Width,
    double Height,
    string Ground,
    string Ink,
    ImmutableArray<PatternMark> Marks
)
{
    private static readonly ImmutableArray<PatternTile> Tiles =
    [
        new(
            "chips",
            22,
            16,
            "#d3ad7f",
            "#5b3a1c",
            [
                Shape(2, 4, 8, 2, 9, 4.4, 3, 6.4),
                Shape(13, 2, 15, 1, 19, 5, 17, 6.2),
                Shape(4, 10, 6, 9.4, 8.4, 14.4, 6.4, 15),
                Shape(12, 11, 20, 9.6, 20.4, 12, 12.4, 13.4),
            ]
        ),
        new(
            "straw",
            26,
            9,
            "#ecd48b",
            "#7d6118",
            [
                Line(1, 0, 2, 14, 1, 18, 1.4),
                Line(1, 16, 5, 26, 4),
                Line(1, 0, 6, 9, 4.6),
                Line(1, 6, 8.2, 22, 7),
            ]
        ),
        new(
            "leaves",
            24,
            18,
            "#e2b25c",
            "#74440f",
            [
                Outline(1, 2, 6, 5, 2.6, 9, 2.6, 12, 5, 9, 8, 5, 8.4),
                Line(0.9, 1, 6.4, 9.6, 5),
                Outline(1, 13, 13, 16, 10, 20, 10.4, 22.6, 13.4, 19.6, 16, 16, 16),
                Line(0.9, 12, 12.8, 20.4, 13.2),
            ]
        ),
        new(
            "grass",
            12,
            10,
            "#9fc36b",
            "#2c5417",
            [
                Line(1.1, 2, 9, 2.6, 5, 2, 1.6),
                Line(1.1, 5, 9.6, 5, 4),
                Line(1.1, 8, 9, 8.4, 5, 10, 2),
                Line(1.1, 11, 8, 11, 4.6),
            ]
        ),
        new(
            "green",
            20,
            16,
            "#b9d59a",
            "#2f5d38",
            [
                Line(1, 5, 14, 5, 7),
                Line(1, 5, 10, 1.6, 7),
                Line(1, 5, 9, 8.4, 5.6),
                Dot(5, 4.6, 1.9),
                Line(1, 15, 9, 15, 3),
                Line(1, 15, 6, 18, 4),
                Dot(15, 13, 1.9),
                Dot(11.4, 12, 1.2),
            ]
        ),
        new(
            "scraps",
            20,
            18,
            "#e79b76",
            "#6f1f0c",
            [
                Ring(5, 5, 3.2),
                Ring(15, 13, 3.2),
                Line(1.4, 12, 3, 14, 5.6, 17.6, 5.6, 19, 3),
                Line(1.4, 2, 13, 4, 15.6, 7, 15.2),
            ]
        ),
        new(
            "manure",
            22,
            16,
            "#b48a5f",
            "#3c2410",
            [
                Shape(2, 4, 4, 2, 7.6, 2.4, 8.6, 5, 6.4, 7, 3, 6.4),
                Shape(13, 11, 15, 9, 18.6, 9.6, 19.4, 12.4, 16.6, 14, 13.6, 13.4),
                Line(1, 11, 4, 20, 2.4),
                Line(1, 1, 12, 9, 13.4),
            ]
        ),
        new(
            "soil",
            8,
            8,
            "#8d7560",
            "#21160d",
            [Dot(1.6, 1.6, 0.9), Dot(5.6, 3, 0.9), Dot(3, 6, 0.9), Dot(7, 7, 0.7)]
        ),
        new(
            "paper",
            20,
            18,
            "#efe9da",
            "#5c5648",
            [
                Outline(1, 2, 3, 9, 1.6, 10, 7, 3, 8.4),
                Outline(1, 12, 10, 18, 11, 17.2, 16.4, 11.2, 15.4),
            ]
        ),
        new(
            "fine",
            12,
            12,
            "#cbb79d",
            "#4a3520",
            [
                Line(1, 1.4, 1.4, 4.4, 4.4),
                Line(1, 4.4, 1.4, 1.4, 4.4),
                Line(1, 7.4, 7.4, 10.4, 10.4),
                Line(1, 10.4, 7.4, 7.4, 10.4),
            ]
        ),
    ];

    /// <summary>The tile of a class.</summary>
    /// <param name="kind">The class.</param>
    public static PatternTile Of(PatternKind kind) => Tiles[(int)kind];

    /// <summary>The class an ingredient is drawn as.</summary>
    /// <param name="ingredient">The ingredient.</param>
    public static PatternKind KindOf(Ingredient ingredient)
    {
        ArgumentNullException.ThrowIfNull(ingredient);
        return KindOf(ingredient.Material);
    }

    /// <summary>The class a material is drawn as; a green plant where it is not known.</summary>
    /// <param name="material">The material, or null.</param>
    public static PatternKind KindOf(Material? material)
    {
        if (material is null)
        {
            return PatternKind.Green;
        }

        var brown = material.CountsAs is "brown" or "structure";
        return material.Group switch
        {
            _ when material.Kind is "woody" => material.Particle == "fine"
                ? PatternKind.Fine
                : PatternKind.Chips,
            "straw_hay" => PatternKind.Straw,
            "leaves" => PatternKind.Leaves,
            "grass" => PatternKind.Grass,
            "manure" => PatternKind.Manure,
            "paper" => PatternKind.Paper,
            "soil" or "mineral" => PatternKind.Soil,
            "meal" => PatternKind.Fine,
            "kitchen" or "processing" => material.Kind is "seedy" or "meal"
                ? PatternKind.Fine
                : PatternKind.Scraps,
            _ => brown ? PatternKind.Straw : PatternKind.Green,
        };
    }
}
