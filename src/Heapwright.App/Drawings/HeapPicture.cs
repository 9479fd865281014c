using System.Collections.Immutable;

namespace Heapwright.App.Drawings;

/// <summary>A heap in cross-section, to scale: what SVG, paper and screen draw.</summary>
/// <param name="Width">Width of the picture, in its own units.</param>
/// <param name="Height">Height of the picture.</param>
/// <param name="Title">Its title, for those who cannot see it.</param>
/// <param name="Description">What it shows, in words.</param>
/// <param name="UnitsPerCentimetre">The scale of the heap.</param>
/// <param name="Items">What is drawn, in this order.</param>
public sealed record HeapPicture(
    double Width,
    double Height,
    string Title,
    string Description,
    double UnitsPerCentimetre,
    ImmutableArray<PictureItem> Items
)
{
    /// <summary>Draws a sheet's heap.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="size">For how much room.</param>
    public static HeapPicture Of(BuildSheets.BuildSheet sheet, PictureSize size) =>
        new HeapDraughtsman(sheet, size).Draw();
}
