using Heapwright.Core.Materials;

namespace Heapwright.App.Drawings;

/// <summary>The patterns of all classes of material in one hidden picture, for swatches anywhere on a page.</summary>
public static class MaterialSprite
{
    /// <summary>The names of all patterns.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [.. Enum.GetValues<PatternKind>().Select(k => PatternTile.Of(k).Name)];

    /// <summary>The name of the pattern of a material.</summary>
    /// <param name="material">The material, or null where it is not known.</param>
    public static string NameOf(Material? material) =>
        PatternTile.Of(PatternTile.KindOf(material)).Name;

    /// <summary>One svg element without a size; each pattern has the id of the prefix, a hyphen and its name.</summary>
    /// <param name="idPrefix">Begins every id; letters.</param>
    /// <param name="className">The class of the element, by which the page hides it.</param>
    public static string Svg(string idPrefix, string className)
    {
        var svg = new SvgText();
        svg.Open(
            "svg",
            ("width", 0),
            ("height", 0),
            ("class", className),
            ("aria-hidden", "true"),
            ("focusable", "false")
        );
        svg.Open("defs");
        foreach (var kind in Enum.GetValues<PatternKind>())
        {
            SvgPatterns.Write(svg, kind, SvgUse.Page, idPrefix, marksOnly: false);
        }

        return svg.Close("defs").Close("svg").ToString();
    }
}
