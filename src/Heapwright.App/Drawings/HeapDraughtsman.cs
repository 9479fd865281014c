using System.Collections.Immutable;
using Heapwright.App.BuildSheets;
using Heapwright.App.Texts;
using Heapwright.Core.Bins;
using Heapwright.Core.BuildPlans;
using UnitsNet;

namespace Heapwright.App.Drawings;

/// <summary>Lays out the cross-section of a heap: scale, walls, layers, numbers, water.</summary>
internal sealed class HeapDraughtsman
{
    private const double Top = 16;
    private const double Bottom = 44;
    private const int SlopePoints = 14;

    private readonly BuildSheet sheet;
    private readonly BuildPlan plan;
    private readonly Measures measures;
    private readonly ImmutableArray<PictureItem>.Builder items =
        ImmutableArray.CreateBuilder<PictureItem>();
    private readonly bool wide;
    private readonly double width;
    private readonly double left;
    private readonly double text;
    private readonly double scale;
    private readonly double ground;
    private readonly double middle;
    private readonly double labels;
    private readonly double labelStep;
    private readonly double disc;

    public HeapDraughtsman(BuildSheet sheet, PictureSize size)
    {
        this.sheet = sheet;
        plan = sheet.Plan;
        measures = sheet.Measures;
        wide = size == PictureSize.Wide;
        width = wide ? 860 : 374;
        left = wide ? 52 : 44;
        text = wide ? 13 : 12;
        // Many layers: smaller discs, so that the heap need not shrink for them.
        (labelStep, disc) = plan.Layers.Length <= 14 ? (19, 18) : (15.5, 15);
        var column = wide ? 470 : 92;
        var room = width - left - column - 12;
        var tallest = Math.Max(plan.Height.Centimeters, HasWalls ? plan.Bin.Height.Centimeters : 0);
        var widest = plan.Outline.Width.Centimeters;
        scale = Math.Min(room / widest, 300 / tallest);
        var high = Math.Max(tallest * scale, (plan.Layers.Length * labelStep) - Bottom + 16);
        ground = Top + high;
        middle = left + (room / 2);
        labels = left + room + (wide ? 36 : 30);
    }

    private bool HasWalls => plan.Outline.HasWalls;

    public HeapPicture Draw()
    {
        Ruler();
        Layers();
        Walls();
        Settled();
        WidthLine();
        Numbers();
        var layers = plan.Layers.Select(Describe);
        return new HeapPicture(
            width,
            ground + Bottom,
            Words.Of("buildplans.drawing_title"),
            Words.Of(
                "buildplans.drawing_desc",
                null,
                plan.Layers.Length,
                measures.Short(plan.Height),
                measures.Long(plan.Outline.Width),
                string.Join(' ', layers)
            ),
            scale,
            items.ToImmutable()
        );
    }

    private string Describe(BuildLayer layer) =>
        Words.Of(
            "buildplans.drawing_layer",
            null,
            layer.Number,
            string.Join(", ", layer.Parts.Select(p => SheetWords.Part(p, measures))),
            measures.Short(layer.Thickness),
            SheetWords.Water(layer, measures)
        );

    private double Y(Length level) => ground - (level.Centimeters * scale);

    private void Ruler()
    {
        var tallest = Length.FromCentimeters(
            Math.Max(plan.Height.Centimeters, HasWalls ? plan.Bin.Height.Centimeters : 0)
        );
        var (step, unit) = measures.InInches
            ? (Length.FromInches(tallest.Inches > 60 ? 12 : 6), "in")
            : (Length.FromCentimeters(tallest.Centimeters > 160 ? 50 : 20), "cm");
        var x = left - 8;
        for (var level = Length.Zero; level <= tallest * 1.001; level += step)
        {
            Line(PictureTone.Soft, 1, x, Y(level), x + 5, Y(level));
            var figure = measures.InInches ? level.Inches : level.Centimeters;
            var word = level.Meters <= 0 ? unit : figure.ToString("0", measures.Culture);
            Text(x - 4, Y(level) + 4, word, text - 1, 1, PictureTone.Soft);
        }

        Line(PictureTone.Soft, 1, x + 5, Y(tallest), x + 5, ground);
        var half = (plan.Outline.Width.Centimeters * scale / 2) + 9;
        Line(PictureTone.Ink, 2.5, middle - half, ground + 1.2, middle + half, ground + 1.2);
    }

    private void Layers()
    {
        foreach (var layer in plan.Layers)
        {
            if (layer.Role == LayerRole.Cover && !HasWalls)
            {
                // A coat all round lies behind the core.
                items.Insert(0, Area(layer, Slope(Length.Zero, plan.Height, plan.Outline.WidthAt)));
                continue;
            }

            var points = HasWalls
                ? Slab(layer)
                : Slope(layer.Bottom, layer.Top, plan.Outline.CoreWidthAt);
            items.Add(Area(layer, points));
            if (layer.Parts.Any(p => p.InMiddle))
            {
                Scraps(layer);
            }

            // The upper edge: between walls the second half of the outline, on slopes the line across.
            var edge = HasWalls
                ? points[(points.Length / 2)..]
                : points[(2 * SlopePoints)..((2 * SlopePoints) + 4)];
            Line(PictureTone.OnWhite, 0.7, edge);
        }

        if (!HasWalls)
        {
            Line(PictureTone.Ink, 1.4, Slope(Length.Zero, plan.Height, plan.Outline.WidthAt));
        }
    }

    // The mark of what there is most of, with the marks of the second over it.
    private static PictureItem.Area Area(BuildLayer layer, double[] points)
    {
        var kinds = layer
            .Parts.Where(p => !p.InMiddle || layer.Parts.All(q => q.InMiddle))
            .GroupBy(p => PatternTile.KindOf(p.Ingredient))
            .Select(g => (Kind: g.Key, Litres: g.Sum(p => p.Loose.Liters)))
            .OrderByDescending(k => k.Litres)
            .ToList();
        PatternKind? over =
            kinds.Count > 1 && kinds[1].Litres >= 0.15 * kinds[0].Litres ? kinds[1].Kind : null;
        return new PictureItem.Area([.. points], kinds[0].Kind, over);
    }

    // Layers laid by hand are not ruled: a slight swell, none where the layer is thin.
    private double[] Slab(BuildLayer layer)
    {
        var half = plan.Outline.Width.Centimeters * scale / 2;
        var points = new List<double>();
        const int Steps = 12;
        for (var i = 0; i <= Steps; i++)
        {
            var x = -half + (2 * half * i / Steps);
            points.Add(middle + x);
            points.Add(Y(layer.Bottom) - Swell(layer.Number - 1, i, Steps));
        }

        for (var i = Steps; i >= 0; i--)
        {
            var x = -half + (2 * half * i / Steps);
            points.Add(middle + x);
            points.Add(Y(layer.Top) - Swell(layer.Number, i, Steps));
        }

        return [.. points];
    }

    private double Swell(int boundary, int i, int steps)
    {
        if (boundary == 0)
        {
            return 0;
        }

        var below = plan.Layers[boundary - 1].Thickness.Centimeters;
        var above =
            boundary < plan.Layers.Length ? plan.Layers[boundary].Thickness.Centimeters : below;
        var height = Math.Min(1.2, 0.25 * Math.Min(below, above)) * scale;
        return height * Math.Sin((2.3 * boundary) + (2 * Math.PI * 1.5 * i / steps));
    }

    private double[] Slope(Length from, Length to, Func<Length, Length> widthAt)
    {
        var points = new List<double>();
        for (var i = 0; i <= SlopePoints; i++)
        {
            var level = from + ((to - from) * i / SlopePoints);
            points.Add(middle - (widthAt(level).Centimeters * scale / 2));
            points.Add(Y(level));
        }

        for (var i = SlopePoints; i >= 0; i--)
        {
            var level = from + ((to - from) * i / SlopePoints);
            points.Add(middle + (widthAt(level).Centimeters * scale / 2));
            points.Add(Y(level));
        }

        return [.. points];
    }

    private void Scraps(BuildLayer layer)
    {
        var margin = plan.ScrapsMargin ?? Length.FromCentimeters(LayerLimits.ScrapsMargin);
        var level = (layer.Bottom + layer.Top) / 2;
        var across = plan.Outline.CoreWidthAt(level).Centimeters * scale;
        var half = Math.Max(4, (across / 2) - (margin.Centimeters * scale));
        var scraps = layer.Parts.Where(p => p.InMiddle).Sum(p => p.Loose.Liters);
        var share = scraps / layer.Parts.Sum(p => p.Loose.Liters);
        var inside = Math.Max(plan.Outline.ShareInside(level, margin), share);
        var high = (Y(layer.Bottom) - Y(layer.Top)) * share / inside;
        var foot = Y(layer.Bottom) - ((Y(layer.Bottom) - Y(layer.Top) - high) * 0.3);
        var bevel = Math.Min(high / 2, 5);
        items.Add(
            new PictureItem.Area(
                [
                    middle - half,
                    foot - bevel,
                    middle - half + bevel,
                    foot,
                    middle + half - bevel,
                    foot,
                    middle + half,
                    foot - bevel,
                    middle + half - bevel,
                    foot - high,
                    middle - half + bevel,
                    foot - high,
                ],
                PatternKind.Scraps,
                null
            )
        );
        Line(
            PictureTone.OnWhite,
            1.2,
            middle - half,
            foot - bevel,
            middle - half + bevel,
            foot,
            middle + half - bevel,
            foot,
            middle + half,
            foot - bevel,
            middle + half - bevel,
            foot - high,
            middle - half + bevel,
            foot - high,
            middle - half,
            foot - bevel
        );
        MarginMark(level, half, across / 2, margin);
    }

    private void MarginMark(Length level, double half, double edge, Length margin)
    {
        var gap = edge - half;
        if (gap < 34)
        {
            return;
        }

        var y = Y(level);
        var word = measures.Short(margin);
        var plate = (word.Length * 5.6) + 8;
        var centre = middle - half - (gap / 2);
        Line(PictureTone.OnWhite, 1, middle - edge + 1, y, middle - half - 1, y);
        items.Add(new PictureItem.Plate(centre - (plate / 2), y - 7, plate, 14));
        Text(centre, y + 3.6, word, 10.5, 0, PictureTone.OnWhite);
    }

    private void Walls()
    {
        if (!HasWalls)
        {
            return;
        }

        var half = plan.Outline.Width.Centimeters * scale / 2;
        var thick = plan.Bin.Shape == BinShape.Box ? Math.Clamp(3 * scale, 4, 9) : 2.5;
        foreach (var side in new[] { -1, 1 })
        {
            var inner = middle + (side * half);
            var outer = inner + (side * thick);
            if (plan.Bin.Shape == BinShape.Box)
            {
                // Boards with gaps: air comes in from the side.
                var board = Length.FromCentimeters(10);
                for (var from = Length.Zero; from < plan.Bin.Height; from += board * 1.25)
                {
                    var to = from + board > plan.Bin.Height ? plan.Bin.Height : from + board;
                    items.Add(
                        new PictureItem.Block(
                            [inner, Y(from), outer, Y(from), outer, Y(to), inner, Y(to)],
                            PictureTone.Wall
                        )
                    );
                }
            }
            else
            {
                Line(PictureTone.Wall, thick, inner, ground, inner, Y(plan.Bin.Height));
            }
        }
    }

    private void Settled()
    {
        var y = Y(plan.SettledHeight);
        var half = plan.Outline.WidthAt(plan.SettledHeight).Centimeters * scale / 2;
        half += HasWalls ? 0 : 16;
        var word = measures.Short(plan.SettledHeight) + " " + Words.Of("buildplans.settled_line");
        var plate = (word.Length * 5.7) + 10;
        items.Add(
            new PictureItem.Stroke(
                [middle - half, y, middle + half, y],
                HasWalls ? PictureTone.OnWhite : PictureTone.Ink,
                1.6,
                Dashed: true
            )
        );
        // Where it is too wide for the heap it stands before it.
        var x = plate < 2 * half ? middle : Math.Max(plate / 2, middle - half - (plate / 2));
        items.Add(new PictureItem.Plate(x - (plate / 2), y - 8, plate, 16));
        Text(x, y + 3.8, word, 10.5, 0, PictureTone.OnWhite);
    }

    private void WidthLine()
    {
        var half = plan.Outline.Width.Centimeters * scale / 2;
        var y = ground + 20;
        Line(PictureTone.Ink, 1, middle - half, y, middle + half, y);
        foreach (var side in new[] { -1, 1 })
        {
            var x = middle + (side * half);
            Line(PictureTone.Ink, 1, x, y - 5, x, y + 5);
        }

        Text(middle, y + 16, measures.Long(plan.Outline.Width), text, 0, PictureTone.Ink);
    }

    private void Numbers()
    {
        var places = Spread();
        for (var i = 0; i < plan.Layers.Length; i++)
        {
            var layer = plan.Layers[i];
            var level = (layer.Bottom + layer.Top) / 2;
            var edge =
                middle
                + (
                    (
                        layer.Role == LayerRole.Cover && !HasWalls
                            ? plan.Outline.WidthAt(level)
                            : plan.Outline.CoreWidthAt(level)
                    ).Centimeters
                    * scale
                    / 2
                );
            var y = places[i];
            var from = edge - 5;
            Line(PictureTone.OnWhite, 0.9, from, Y(level), edge, Y(level));
            Line(PictureTone.Ink, 0.9, edge, Y(level), edge + 10, Y(level), labels - 10, y);
            items.Add(new PictureItem.Block(Dot(from, Y(level), 2), PictureTone.OnWhite));
            items.Add(new PictureItem.Plate(labels - (disc / 2), y - (disc / 2), disc, disc));
            Text(
                labels,
                y + (disc * 0.22),
                layer.Number.ToString("0", measures.Culture),
                disc * (layer.Number > 9 ? 0.58 : 0.66),
                0,
                PictureTone.OnWhite,
                bold: true
            );
            Beside(layer, y);
        }
    }

    private void Beside(BuildLayer layer, double y)
    {
        var x = labels + 16;
        if (wide)
        {
            var word = string.Join(
                " + ",
                layer.Parts.Select(p => SheetWords.ShortPart(p, plan, measures))
            );
            Text(x, y + 4.5, Cut(word, 54), text, -1, PictureTone.Ink);
            x = width - 52;
        }

        if (SheetWords.HasWater(layer, measures))
        {
            items.Add(new PictureItem.Drop(x + 4, y, 12));
            Text(
                x + 12,
                y + 4.5,
                measures.Water(layer.Water.Liters),
                text - 0.5,
                -1,
                PictureTone.Ink
            );
        }
    }

    private static string Cut(string word, int longest) =>
        word.Length <= longest ? word : word[..(longest - 1)].TrimEnd() + "…";

    // Labels as near to their layers as they can stand without touching: where they would, they share the way
    // (pooling of neighbours, on places counted in label steps).
    private double[] Spread()
    {
        var pools = new List<(double Place, int Count)>();
        for (var i = 0; i < plan.Layers.Length; i++)
        {
            var layer = plan.Layers[i];
            var wanted = Y((layer.Bottom + layer.Top) / 2) + (i * labelStep);
            pools.Add((wanted, 1));
            while (pools.Count > 1 && pools[^1].Place > pools[^2].Place)
            {
                var (a, b) = (pools[^2], pools[^1]);
                pools.RemoveRange(pools.Count - 2, 2);
                var count = a.Count + b.Count;
                pools.Add((((a.Place * a.Count) + (b.Place * b.Count)) / count, count));
            }
        }

        var y = new List<double>();
        foreach (var (place, count) in pools)
        {
            for (var i = 0; i < count; i++)
            {
                y.Add(place - (y.Count * labelStep));
            }
        }

        var tooHigh = Math.Max(0, Top - 6 - y[^1]);
        var tooLow = Math.Max(0, y[0] - (ground + Bottom - 12));
        return [.. y.Select(v => v + tooHigh - tooLow)];
    }

    private static ImmutableArray<double> Dot(double x, double y, double r) =>
        [x - r, y, x, y - r, x + r, y, x, y + r];

    private void Line(PictureTone tone, double lineWidth, params double[] points) =>
        items.Add(new PictureItem.Stroke([.. points], tone, lineWidth, Dashed: false));

    private void Text(
        double x,
        double y,
        string word,
        double size,
        int align,
        PictureTone tone,
        bool bold = false
    ) => items.Add(new PictureItem.Label(x, y, word, size, align, tone, bold));
}
