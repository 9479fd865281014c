namespace Heapwright.App.Drawings;

/// <summary>What a line or text of a picture is, and so its colour.</summary>
public enum PictureTone
{
    /// <summary>Text and outlines.</summary>
    Ink,

    /// <summary>Scales, leaders and lesser text.</summary>
    Soft,

    /// <summary>Water.</summary>
    Water,

    /// <summary>Walls of the bin.</summary>
    Wall,

    /// <summary>Text on a white disc or label, dark on every page.</summary>
    OnWhite,
}
