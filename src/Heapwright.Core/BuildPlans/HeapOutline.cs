using Heapwright.Core.Bins;
using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>
/// The outline of a heap as built, and of its core without the cover. Between walls the core is what lies below the
/// cover; without walls the cover is a coat all round, and heap and core keep the proportions of the bin.
/// </summary>
public sealed record HeapOutline
{
    private HeapOutline(BinShape shape) => Shape = shape;

    /// <summary>The shape.</summary>
    public BinShape Shape { get; }

    /// <summary>Whether walls hold it.</summary>
    public bool HasWalls => Shape is BinShape.Box or BinShape.Ring;

    /// <summary>Height of the heap.</summary>
    public required Length Height { get; init; }

    /// <summary>Width at the ground, or diameter.</summary>
    public required Length Width { get; init; }

    /// <summary>Length at the ground, or diameter.</summary>
    public required Length Length { get; init; }

    /// <summary>Height of the core.</summary>
    public required Length CoreHeight { get; init; }

    /// <summary>Width of the core at the ground, or its diameter.</summary>
    public required Length CoreWidth { get; init; }

    /// <summary>Volume of the core.</summary>
    public required Volume Core { get; init; }

    /// <summary>Volume of the heap.</summary>
    public required Volume Volume { get; init; }

    /// <summary>The outline of a volume in a bin.</summary>
    /// <param name="bin">The bin.</param>
    /// <param name="volume">The whole heap as built, above 0.</param>
    /// <param name="cover">The part of it that is the cover.</param>
    public static HeapOutline Of(Bin bin, Volume volume, Volume cover)
    {
        ArgumentNullException.ThrowIfNull(bin);
        var core = volume - cover;
        var height = bin.HeightFor(volume);
        var coreHeight = core.Liters <= 0 ? Length.Zero : bin.HeightFor(core);
        var walls = bin.Shape is BinShape.Box or BinShape.Ring;
        var scale = walls ? 1 : height / bin.Height;
        var coreScale = walls ? 1 : coreHeight / bin.Height;
        return new HeapOutline(bin.Shape)
        {
            Height = height,
            Width = bin.Width * scale,
            Length = bin.Shape == BinShape.Cone ? bin.Length * scale : bin.Length,
            CoreHeight = coreHeight,
            CoreWidth = bin.Width * coreScale,
            Core = core,
            Volume = volume,
        };
    }

    /// <summary>The height above the ground below which a part of the core lies.</summary>
    /// <param name="below">That part, 0 to <see cref="Core"/>.</param>
    public Length LevelOf(Volume below)
    {
        var share = Core.Liters <= 0 ? 0 : Math.Clamp(below / Core, 0, 1);
        return CoreHeight
            * Shape switch
            {
                BinShape.Cone => 1 - Math.Cbrt(1 - share),
                BinShape.Windrow => 1 - Math.Pow(1 - share, 2.0 / 3),
                _ => share,
            };
    }

    /// <summary>The part of the core that lies below a height.</summary>
    /// <param name="level">The height above the ground.</param>
    public Volume CoreBelow(Length level)
    {
        var share = CoreHeight <= Length.Zero ? 0 : Math.Clamp(level / CoreHeight, 0, 1);
        return Core
            * Shape switch
            {
                BinShape.Cone => 1 - Math.Pow(1 - share, 3),
                BinShape.Windrow => 1 - Math.Pow(1 - share, 1.5),
                _ => share,
            };
    }

    /// <summary>How wide the core is at a height.</summary>
    /// <param name="level">The height above the ground.</param>
    public Length CoreWidthAt(Length level) => Across(CoreWidth, CoreHeight, level);

    /// <summary>The area of the core at a height.</summary>
    /// <param name="level">The height above the ground.</param>
    public Area CoreFloorAt(Length level)
    {
        var width = CoreWidthAt(level);
        return Shape is BinShape.Cone or BinShape.Ring
            ? width * width * (Math.PI / 4)
            : width * Length;
    }

    /// <summary>How wide the heap is at a height, cover included.</summary>
    /// <param name="level">The height above the ground.</param>
    public Length WidthAt(Length level) => Across(Width, Height, level);

    /// <summary>
    /// The share of the floor at a height that is at least a margin away from every side; 0 where the heap is too
    /// narrow.
    /// </summary>
    /// <param name="level">The height above the ground.</param>
    /// <param name="margin">How far to stay away from the sides.</param>
    public double ShareInside(Length level, Length margin)
    {
        var width = CoreWidthAt(level);
        if (width <= margin * 2)
        {
            return 0;
        }

        var across = 1 - (margin * 2 / width);
        return Shape is BinShape.Cone or BinShape.Ring
            ? across * across
            : across * Math.Max(0, 1 - (margin * 2 / Length));
    }

    private Length Across(Length width, Length height, Length level)
    {
        var up = height <= Length.Zero ? 1 : Math.Clamp(level / height, 0, 1);
        return width
            * Shape switch
            {
                BinShape.Cone => 1 - up,
                BinShape.Windrow => Math.Sqrt(1 - up),
                _ => 1,
            };
    }
}
