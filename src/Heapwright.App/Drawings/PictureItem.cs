using System.Collections.Immutable;

namespace Heapwright.App.Drawings;

/// <summary>One thing in a picture; x runs to the right and y down, in units of the picture.</summary>
public abstract record PictureItem
{
    private PictureItem() { }

    /// <summary>A closed area filled with a pattern.</summary>
    /// <param name="Points">x and y in turn.</param>
    /// <param name="Pattern">The pattern.</param>
    /// <param name="Over">A second pattern whose marks are drawn over it, for stuff that is mixed in; or null.</param>
    public sealed record Area(ImmutableArray<double> Points, PatternKind Pattern, PatternKind? Over)
        : PictureItem;

    /// <summary>A filled shape in one colour.</summary>
    /// <param name="Points">x and y in turn.</param>
    /// <param name="Tone">The colour.</param>
    public sealed record Block(ImmutableArray<double> Points, PictureTone Tone) : PictureItem;

    /// <summary>A line.</summary>
    /// <param name="Points">x and y in turn, two points or more.</param>
    /// <param name="Tone">The colour.</param>
    /// <param name="Width">Its width.</param>
    /// <param name="Dashed">Whether it is dashed.</param>
    public sealed record Stroke(
        ImmutableArray<double> Points,
        PictureTone Tone,
        double Width,
        bool Dashed
    ) : PictureItem;

    /// <summary>A text on one line.</summary>
    /// <param name="X">Where it begins, ends or is centred.</param>
    /// <param name="Y">The base line.</param>
    /// <param name="Text">The text.</param>
    /// <param name="Size">Height of the letters.</param>
    /// <param name="Align">-1 begins at x, 0 is centred on it, 1 ends there.</param>
    /// <param name="Tone">The colour.</param>
    /// <param name="Bold">Whether it is bold.</param>
    public sealed record Label(
        double X,
        double Y,
        string Text,
        double Size,
        int Align,
        PictureTone Tone,
        bool Bold
    ) : PictureItem;

    /// <summary>A white disc or rounded plate, for text on it.</summary>
    /// <param name="X">Left.</param>
    /// <param name="Y">Top.</param>
    /// <param name="Width">Width.</param>
    /// <param name="Height">Height; half of it is the radius of the corners.</param>
    public sealed record Plate(double X, double Y, double Width, double Height) : PictureItem;

    /// <summary>A drop of water.</summary>
    /// <param name="X">Its middle.</param>
    /// <param name="Y">Its middle.</param>
    /// <param name="Size">Its height.</param>
    public sealed record Drop(double X, double Y, double Size) : PictureItem;
}
