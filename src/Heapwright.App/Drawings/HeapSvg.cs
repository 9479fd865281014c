using Heapwright.App.BuildSheets;
using Heapwright.Core.BuildPlans;

namespace Heapwright.App.Drawings;

/// <summary>The cross-section of a heap as SVG.</summary>
public static class HeapSvg
{
    private const string Font = "Noto Sans, DejaVu Sans, Helvetica, Arial, sans-serif";

    /// <summary>Draws a sheet's heap.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="size">For how much room.</param>
    /// <param name="use">Whether it is a file of its own or stands within a page.</param>
    /// <param name="idPrefix">Begins every id, so that two pictures can stand on one page; letters, digits, hyphens.</param>
    /// <returns>One svg element.</returns>
    public static string Of(
        BuildSheet sheet,
        PictureSize size = PictureSize.Wide,
        SvgUse use = SvgUse.File,
        string idPrefix = "heap"
    )
    {
        ArgumentNullException.ThrowIfNull(sheet);
        CheckPrefix(idPrefix);
        return Of(HeapPicture.Of(sheet, size), use, idPrefix);
    }

    /// <summary>A square that shows how a layer is drawn, for the list beside the picture; it says nothing new.</summary>
    /// <param name="layer">The layer.</param>
    /// <param name="use">Whether it is a file of its own or stands within a page.</param>
    /// <param name="idPrefix">Begins every id.</param>
    public static string Swatch(BuildLayer layer, SvgUse use, string idPrefix)
    {
        ArgumentNullException.ThrowIfNull(layer);
        CheckPrefix(idPrefix);
        var kind = SwatchKind(layer);
        var svg = new SvgText();
        svg.Open(
            "svg",
            ("xmlns", "http://www.w3.org/2000/svg"),
            ("viewBox", "0 0 44 44"),
            ("class", "heap-swatch"),
            ("aria-hidden", "true"),
            ("focusable", "false")
        );
        svg.Open("defs");
        SvgPatterns.Write(svg, kind, use, idPrefix, marksOnly: false);
        svg.Close("defs");
        svg.Empty(
            "rect",
            ("x", 0.5),
            ("y", 0.5),
            ("width", 43),
            ("height", 43),
            ("rx", 6),
            ("fill", SvgPatterns.Reference(kind, idPrefix, marksOnly: false)),
            ("stroke", SvgColours.Of(PictureTone.Ink, use)),
            ("stroke-width", 1)
        );
        return svg.Close("svg").ToString();
    }

    /// <summary>The pattern that stands for a layer: scraps where there are any, else what there is most of.</summary>
    internal static PatternKind SwatchKind(BuildLayer layer) =>
        PatternTile.KindOf(
            layer.Parts.MaxBy(p => p.InMiddle ? double.MaxValue : p.Loose.Liters)!.Ingredient
        );

    private static string Of(HeapPicture picture, SvgUse use, string prefix)
    {
        var svg = new SvgText();
        svg.Open(
            "svg",
            ("xmlns", "http://www.w3.org/2000/svg"),
            ("viewBox", $"0 0 {SvgText.Number(picture.Width)} {SvgText.Number(picture.Height)}"),
            ("width", picture.Width),
            ("height", picture.Height),
            ("class", "heap-picture"),
            ("role", "img"),
            ("aria-labelledby", $"{prefix}-title {prefix}-desc"),
            ("font-family", Font)
        );
        svg.Break();
        svg.Open("title", ("id", prefix + "-title")).Words(picture.Title).Close("title");
        svg.Open("desc", ("id", prefix + "-desc")).Words(picture.Description).Close("desc");
        svg.Break().Open("defs");
        foreach (
            var area in picture.Items.OfType<PictureItem.Area>().Select(a => a.Pattern).Distinct()
        )
        {
            SvgPatterns.Write(svg, area, use, prefix, marksOnly: false);
        }

        foreach (
            var over in picture
                .Items.OfType<PictureItem.Area>()
                .Select(a => a.Over)
                .OfType<PatternKind>()
                .Distinct()
        )
        {
            SvgPatterns.Write(svg, over, use, prefix, marksOnly: true);
        }

        svg.Close("defs").Break();
        if (use == SvgUse.File)
        {
            svg.Empty(
                "rect",
                ("width", picture.Width),
                ("height", picture.Height),
                ("fill", "#ffffff")
            );
        }

        foreach (var item in picture.Items)
        {
            Write(svg, item, use, prefix);
            svg.Break();
        }

        return svg.Close("svg").Break().ToString();
    }

    private static void Write(SvgText svg, PictureItem item, SvgUse use, string prefix)
    {
        switch (item)
        {
            case PictureItem.Area area:
                WriteArea(svg, area, prefix);
                break;
            case PictureItem.Block block:
                svg.Empty(
                    "path",
                    ("d", SvgText.Path(block.Points.AsSpan(), closed: true)),
                    ("fill", SvgColours.Of(block.Tone, use))
                );
                break;
            case PictureItem.Stroke stroke:
                WriteStroke(svg, stroke, use);
                break;
            case PictureItem.Label label:
                svg.Open(
                        "text",
                        ("x", label.X),
                        ("y", label.Y),
                        ("font-size", label.Size),
                        ("font-weight", label.Bold ? "700" : "400"),
                        (
                            "text-anchor",
                            label.Align switch
                            {
                                < 0 => "start",
                                0 => "middle",
                                _ => "end",
                            }
                        ),
                        ("fill", SvgColours.Of(label.Tone, use))
                    )
                    .Words(label.Text)
                    .Close("text");
                break;
            case PictureItem.Plate plate:
                svg.Empty(
                    "rect",
                    ("x", plate.X),
                    ("y", plate.Y),
                    ("width", plate.Width),
                    ("height", plate.Height),
                    ("rx", plate.Height / 2),
                    ("fill", "#ffffff"),
                    ("stroke", SvgColours.OnWhite),
                    ("stroke-width", 1)
                );
                break;
            case PictureItem.Drop drop:
                WriteDrop(svg, drop, use);
                break;
            default:
                throw new InvalidOperationException("unknown item " + item.GetType().Name);
        }
    }

    private static void WriteArea(SvgText svg, PictureItem.Area area, string prefix)
    {
        var path = SvgText.Path(area.Points.AsSpan(), closed: true);
        svg.Empty(
            "path",
            ("d", path),
            ("class", "heap-" + PatternTile.Of(area.Pattern).Name),
            ("fill", SvgPatterns.Reference(area.Pattern, prefix, marksOnly: false))
        );
        if (area.Over is { } over)
        {
            svg.Empty(
                "path",
                ("d", path),
                ("fill", SvgPatterns.Reference(over, prefix, marksOnly: true))
            );
        }
    }

    private static void WriteStroke(SvgText svg, PictureItem.Stroke stroke, SvgUse use)
    {
        var path = SvgText.Path(stroke.Points.AsSpan(), closed: false);
        if (stroke.Dashed)
        {
            // White below the dashes keeps them to be seen on dark stuff.
            svg.Empty(
                "path",
                ("d", path),
                ("fill", "none"),
                ("stroke", "#ffffff"),
                ("stroke-width", stroke.Width + 1.6)
            );
            svg.Empty(
                "path",
                ("d", path),
                ("fill", "none"),
                ("stroke", SvgColours.Of(stroke.Tone, use)),
                ("stroke-width", stroke.Width),
                ("stroke-dasharray", "7 4")
            );
            return;
        }

        svg.Empty(
            "path",
            ("d", path),
            ("fill", "none"),
            ("stroke", SvgColours.Of(stroke.Tone, use)),
            ("stroke-width", stroke.Width),
            ("stroke-linejoin", "round")
        );
    }

    private static void WriteDrop(SvgText svg, PictureItem.Drop drop, SvgUse use)
    {
        var (x, y, r) = (drop.X, drop.Y, drop.Size / 2);
        string N(double value) => SvgText.Number(value);
        svg.Empty(
            "path",
            (
                "d",
                $"M{N(x)} {N(y - r)}C{N(x + (0.35 * r))} {N(y - (0.4 * r))} {N(x + (0.75 * r))} {N(y)} {N(x + (0.75 * r))} {N(y + (0.3 * r))}"
                    + $"A{N(0.75 * r)} {N(0.7 * r)} 0 1 1 {N(x - (0.75 * r))} {N(y + (0.3 * r))}"
                    + $"C{N(x - (0.75 * r))} {N(y)} {N(x - (0.35 * r))} {N(y - (0.4 * r))} {N(x)} {N(y - r)}Z"
            ),
            ("fill", SvgColours.Of(PictureTone.Water, use))
        );
    }

    private static void CheckPrefix(string prefix)
    {
        ArgumentException.ThrowIfNullOrEmpty(prefix);
        if (
            !char.IsAsciiLetter(prefix[0])
            || prefix.Any(c => !char.IsAsciiLetterOrDigit(c) && c != '-')
        )
        {
            throw new ArgumentException(
                "letters, digits and hyphens are allowed, a letter first: " + prefix,
                nameof(prefix)
            );
        }
    }
}
