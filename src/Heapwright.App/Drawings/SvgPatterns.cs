namespace Heapwright.App.Drawings;

/// <summary>Pattern tiles as SVG.</summary>
internal static class SvgPatterns
{
    public static string Reference(PatternKind kind, string prefix, bool marksOnly) =>
        $"url(#{Id(kind, prefix, marksOnly)})";

    public static void Write(
        SvgText svg,
        PatternKind kind,
        SvgUse use,
        string prefix,
        bool marksOnly
    )
    {
        var tile = PatternTile.Of(kind);
        svg.Open(
            "pattern",
            ("id", Id(kind, prefix, marksOnly)),
            ("width", tile.Width),
            ("height", tile.Height),
            ("patternUnits", "userSpaceOnUse")
        );
        if (!marksOnly)
        {
            svg.Empty(
                "rect",
                ("width", tile.Width),
                ("height", tile.Height),
                ("fill", SvgColours.Of($"heap-{tile.Name}", tile.Ground, use))
            );
        }

        var ink = SvgColours.Of($"heap-{tile.Name}-ink", tile.Ink, use);
        foreach (var mark in tile.Marks)
        {
            Write(svg, mark, ink);
        }

        svg.Close("pattern").Break();
    }

    private static void Write(SvgText svg, PatternMark mark, string ink)
    {
        if (mark.IsDot)
        {
            svg.Empty(
                "circle",
                ("cx", mark.Points[0]),
                ("cy", mark.Points[1]),
                ("r", mark.Width),
                ("fill", ink)
            );
            return;
        }

        var path = SvgText.Path(mark.Points.AsSpan(), mark.Closed);
        if (mark.Filled)
        {
            svg.Empty("path", ("d", path), ("fill", ink));
        }
        else
        {
            svg.Empty(
                "path",
                ("d", path),
                ("fill", "none"),
                ("stroke", ink),
                ("stroke-width", mark.Width),
                ("stroke-linecap", "round")
            );
        }
    }

    private static string Id(PatternKind kind, string prefix, bool marksOnly) =>
        $"{prefix}-{PatternTile.Of(kind).Name}{(marksOnly ? "-marks" : "")}";
}
