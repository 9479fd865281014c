namespace Heapwright.App.Drawings;

/// <summary>Where an SVG will stand.</summary>
public enum SvgUse
{
    /// <summary>A file of its own: plain colours, for every program that reads SVG.</summary>
    File,

    /// <summary>Within a page: colours are custom properties of the page, with plain ones to fall back on.</summary>
    Page,
}
