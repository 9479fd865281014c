using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Bunit;
using Heapwright.App.Sites;
using Heapwright.Web.Drawings;
using Heapwright.Web.Showing;
using Microsoft.AspNetCore.Components;

namespace Heapwright.Web.Tests;

/// <summary>
/// Every drawing of invented figures against the file of it under tests/drawings, letter by letter; a browser looks at
/// these files in a test of its own. HEAPWRIGHT_PICTURES=1 writes them anew.
/// </summary>
public sealed class DrawingFileTests
{
    private static readonly Shown Show = new(
        DisplayUnits.Metric,
        CultureInfo.GetCultureInfo("en-GB")
    );

    private static readonly string[] Hand = ["dust", "dry", "sponge", "drips", "streams"];

    private static readonly string[] Warmth = ["cold", "cool", "warm", "hot", "too_hot_to_hold"];

    private static string Folder => Path.Combine(ContrastTests.Root(), "tests", "drawings");

    [Fact]
    public void Drawings_OfInventedFigures_AreAsTheirFiles()
    {
        using var context = new BunitContext();
        var drawn = Drawings(context).ToDictionary(d => d.Name, d => d.Svg);
        if (Environment.GetEnvironmentVariable("HEAPWRIGHT_PICTURES") == "1")
        {
            foreach (var (name, svg) in drawn)
            {
                File.WriteAllText(Path.Combine(Folder, name + ".html"), svg);
            }
        }

        var kept = Directory
            .EnumerateFiles(Folder, "*.html")
            .ToDictionary(f => Path.GetFileNameWithoutExtension(f), File.ReadAllText);
        Assert.Equal(drawn.Keys.Order(), kept.Keys.Order());
        Assert.All(drawn, d => Assert.Equal(kept[d.Key], d.Value));
    }

    private static IEnumerable<(string Name, string Svg)> Drawings(BunitContext context)
    {
        yield return ("patterns", Of<MaterialPatterns>(context, _ => { }));
        yield return (
            "swatches",
            string.Concat(
                App.Drawings.MaterialSprite.Names.Select(n =>
                    Of<Swatch>(context, p => p.Add(s => s.Look, n))
                )
            )
        );
        yield return (
            "squeezes",
            Each<SqueezePicture>(context, Hand, (p, w) => p.Add(s => s.Word, w))
        );
        yield return (
            "warmths",
            Each<WarmthPicture>(context, Warmth, (p, w) => p.Add(s => s.Word, w))
        );
        yield return (
            "growths",
            Each<WhitePicture>(context, WhitePicture.Words, (p, w) => p.Add(s => s.Word, w))
        );
        yield return (
            "smells",
            Each<SmellPicture>(context, SmellPicture.Words, (p, w) => p.Add(s => s.Word, w))
        );
        yield return (
            "stages",
            Each<StagePicture>(context, StagePicture.Words, (p, w) => p.Add(s => s.Word, w))
        );
        yield return ("chances", Of<ChanceDots>(context, p => p.Add(c => c.Chance, 0.7)));
        yield return ("yard", Of<YardPicture>(context, _ => { }));
        yield return (
            "label",
            Of<QrPicture>(
                context,
                p => p.Add(q => q.Text, "http://127.0.0.1:5080/b/K7Q2").Add(q => q.Words, "Code")
            )
        );
        yield return ("heat-key", Of<HeatLegend>(context, p => p.Add(l => l.Show, Show)));
        yield return (
            "gauge",
            Of<Gauge>(
                context,
                p =>
                    p.Add(
                            g => g.View,
                            new GaugeView(
                                "moisture_pct_wb",
                                new ValueRange(52.4, 55.3, 58.2),
                                50,
                                60,
                                "good",
                                0.8,
                                "Damp.",
                                "common_practice"
                            )
                        )
                        .Add(g => g.Show, Show)
            )
        );
        yield return ("mound", Mound(context));
        foreach (var shape in new[] { "box", "ring", "cone", "windrow" })
        {
            yield return ("bay-" + shape, InBay(context, shape));
        }

        yield return ("chart-narrow", Chart(context, true, "when-narrow"));
        yield return ("chart-wide", Chart(context, true, "when-wide"));
        yield return ("chart-two", Chart(context, false, "chart"));
        yield return ("inside", Inside(context));
    }

    private static string Mound(BunitContext context) =>
        Of<HeapPicture>(
            context,
            p =>
                p.Add(
                        h => h.Parts,
                        (HeapPart[])
                            [
                                new("chips", "Chips", 200),
                                new("straw", "Straw", 300),
                                new("grass", "Grass", 250),
                                new("leaves", "Leaves", 200),
                            ]
                    )
                    .Add(h => h.Show, Show)
                    .Add(h => h.Bay, Bay("box"))
                    .Add(h => h.FilledLitres, 800)
        );

    private static string InBay(BunitContext context, string shape) =>
        Of<BayPicture>(
            context,
            p =>
                p.Add(b => b.Bay, Bay(shape))
                    .Add(b => b.Show, Show)
                    .Add(b => b.PixelsPerMetre, 100)
                    .Add(b => b.Filled, shape == "ring" ? 0 : 0.8)
                    .Add(b => b.Dial, shape == "ring" ? null : "57°")
        );

    // Thirty days: up within four, down after twelve, with a turn and four readings; the outer part lies 20 below.
    private static string Chart(BunitContext context, bool isWide, string looks)
    {
        double[] days = [.. Enumerable.Range(0, 31).Select(d => (double)d)];
        double Warm(double day) =>
            day < 4 ? 12 + (12 * day) : Math.Max(20, 60 - (1.5 * Math.Max(0, day - 12)));
        HeapSeries Around(double shift) =>
            HeapSeries.Of([
                .. days.Select(d =>
                    (double[])
                        [
                            .. Enumerable
                                .Range(-10, 21)
                                .Select(i => Warm(d) + shift + (i * (1 + (d / 6)) / 5)),
                        ]
                ),
            ]);
        var chart = context.Render<FanChart>(p =>
            p.Add(c => c.Days, days)
                .Add(c => c.First, Around(0))
                .Add(c => c.Second, isWide ? null : Around(-20))
                .Add(c => c.Label, "Core")
                .Add(c => c.Ticks, [0, 20, 40, 60, 80])
                .Add(
                    c => c.Marks,
                    [(55, "hygiene counts from 55 °C"), (65, "over 65 °C work slows")]
                )
                .Add(c => c.Turns, [14])
                .Add(c => c.Dots, [(1, 22), (3, 50), (6, 62), (10, 58)])
                .Add(c => c.Day, 10)
                .Add(c => c.High, 270)
                .Add(c => c.IsWide, isWide)
                .Add(c => c.Figure, v => v.ToString("0", CultureInfo.InvariantCulture))
        );
        return Plain(chart.Find("svg." + looks).OuterHtml);
    }

    private static string Inside(BunitContext context)
    {
        var rings = new[] { 0.2, 0.6, 0.9 };
        var edges = new[] { 0, 0.25, 0.5, 0.75, 1 };
        var answer = new JsonObject
        {
            ["zones"] = new JsonObject
            {
                ["shape"] = "windrow",
                ["width_m"] = 1.6,
                ["height_m"] = 1.1,
                ["ring_centres"] = new JsonArray([.. rings.Select(r => JsonValue.Create(r))]),
                ["layer_edges"] = new JsonArray([.. edges.Select(e => JsonValue.Create(e))]),
                ["day"] = new JsonArray(5.0),
                ["temperature_c"] = new JsonArray([
                    .. new[] { 40.0, 32, 20, 64, 52, 28, 68, 55, 30, 52, 40, 24 }.Select(
                        t => new JsonArray(t)
                    ),
                ]),
            },
        };
        var frame = new HeatFrame(5, 1, 12, 0, "Day 5");
        return Of<HeatPicture>(
            context,
            p =>
                p.Add(h => h.View, HeapView.Of(answer))
                    .Add(h => h.Frames, [frame])
                    .Add(h => h.Chosen, frame)
                    .Add(h => h.Show, Show)
                    .Add(h => h.Cover, "straw")
        );
    }

    private static Bay Bay(string shape) =>
        new()
        {
            Id = new Guid("00000000-0000-4000-8000-000000000001"),
            Name = "Left bay",
            Shape = shape,
            LengthM = 1.2,
            WidthM = 1.2,
            DiameterM = shape is "ring" or "cone" ? 1.2 : null,
            HeightM = 1,
        };

    private static string Each<T>(
        BunitContext context,
        IEnumerable<string> words,
        Action<ComponentParameterCollectionBuilder<T>, string> with
    )
        where T : IComponent => string.Concat(words.Select(w => Of<T>(context, p => with(p, w))));

    private static string Of<T>(
        BunitContext context,
        Action<ComponentParameterCollectionBuilder<T>> with
    )
        where T : IComponent => Plain(context.Render(with).Markup);

    private static string Plain(string markup)
    {
        var plain = new StringBuilder();
        foreach (var line in markup.Split('\n'))
        {
            if (line.Trim() is { Length: > 0 } told)
            {
                plain.Append(told).Append('\n');
            }
        }

        return plain.ToString();
    }
}
