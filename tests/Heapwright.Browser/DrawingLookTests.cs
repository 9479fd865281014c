using System.Globalization;
using System.Text;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>
/// The drawings under tests/drawings as a browser shows them with the style sheet, in light, dark and full sun and in
/// grey on paper, against what they looked like when they were last looked at by a person. Blocks of eight pixels are
/// compared, so that the edges of letters do not count. HEAPWRIGHT_PICTURES=1 makes the pictures anew.
/// </summary>
[Collection(BrowserTests.Name)]
public sealed class DrawingLookTests(FilledSite filled)
{
    private const int Cell = 300;
    private const int High = 240;
    private const int Columns = 4;

    // Of 255. Letters that another font renderer draws stay below 20, what a style hides or colours wrongly is above 40.
    private const double Most = 32;

    private static readonly string[] Names =
    [
        .. Directory
            .EnumerateFiles(Folder, "*.html")
            .Select(f => Path.GetFileNameWithoutExtension(f)!)
            .Where(n => n != "patterns")
            .Order(StringComparer.Ordinal),
    ];

    private static string Folder => KeptPictures.FolderOf("tests", "drawings");

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    [InlineData("sun")]
    [InlineData("paper")]
    public async Task Drawings_InALook_AreAsTheyWereSeen(string look)
    {
        var page = await filled.Site.Visit(true, Columns * Cell, 800);
        await Lay(page, look);
        var shown = await page.ScreenshotAsync(new PageScreenshotOptions { FullPage = true });
        var file = Path.Combine(Folder, $"seen-{look}.png");
        if (KeptPictures.AreMade)
        {
            await File.WriteAllBytesAsync(file, shown, TestContext.Current.CancellationToken);
        }

        var seen = await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken);
        var unlike = await Unlike(page, seen, shown);
        Assert.True(unlike.Length == 0, string.Join(Environment.NewLine, unlike));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Drawings_WithPlantedFaults_AreFound()
    {
        const string Faults = """
            .chart .said { display: none }
            .stage .heap { fill: none }
            .picture .disc { transform: translateX(14px) }
            """;
        var page = await filled.Site.Visit(true, Columns * Cell, 800);
        await Lay(page, "light");
        await page.AddStyleTagAsync(new PageAddStyleTagOptions { Content = Faults });
        var shown = await page.ScreenshotAsync(new PageScreenshotOptions { FullPage = true });
        var seen = await File.ReadAllBytesAsync(
            Path.Combine(Folder, "seen-light.png"),
            TestContext.Current.CancellationToken
        );

        var unlike = await Unlike(page, seen, shown);
        Assert.Equal(
            ["chart-narrow", "chart-two", "inside", "mound", "stages", "chart-wide"],
            unlike.Select(u => u.Split(':')[0])
        );
        await page.Context.CloseAsync();
    }

    // Every drawing in a cell of its own; the wide chart has a row below the others.
    private async Task Lay(IPage page, string look)
    {
        var style = await (await page.APIRequest.GetAsync("/heap.css")).TextAsync();
        var body = new StringBuilder(await Read("patterns"));
        foreach (var (name, at) in Cells())
        {
            body.Append(
                CultureInfo.InvariantCulture,
                $"<div class=cell style='left:{at.X}px;top:{at.Y}px;width:{at.Width}px;height:{at.Height}px'>"
            );
            body.Append(await Read(name)).Append("</div>");
        }

        var (_, last) = Cells().Last();
        await page.EmulateMediaAsync(
            new PageEmulateMediaOptions { Media = look == "paper" ? Media.Print : Media.Screen }
        );
        await page.SetContentAsync(
            $$"""
            <html data-theme="{{(
                look == "paper" ? "light" : look
            )}}"><head><style>{{style}}</style><style>
            body { position: relative; margin: 0; height: {{last.Y
                + last.Height}}px; {{(look == "paper" ? "filter: grayscale(1)" : "")}} }
            .cell { position: absolute; overflow: hidden; padding: 8px; background: var(--card); border: 1px solid var(--line); }
            .cell > .stage { width: 96px; } .cell > .swatch { width: 44px; } .cell > .qr { height: 200px; }
            .cell > .hand, .cell > .white, .cell > .smell, .cell > .stage, .cell > .swatch { float: left; margin: 0; }
            .cell > .hand, .cell > .white, .cell > .smell { width: 66px; height: 66px; }
            .cell > .heat-key { grid-template-columns: 1fr 1fr; }
            .cell > .when-wide, .cell > .when-narrow { display: block; }
            </style></head><body>{{body}}</body></html>
            """
        );
    }

    private static IEnumerable<(string Name, (int X, int Y, int Width, int Height) At)> Cells()
    {
        var i = 0;
        foreach (var name in Names.Where(n => n != "chart-wide"))
        {
            yield return (name, (i % Columns * Cell, i / Columns * High, Cell, High));
            i++;
        }

        yield return (
            "chart-wide",
            (0, (i + Columns - 1) / Columns * High, Columns * Cell, 2 * High)
        );
    }

    private static Task<string> Read(string name) =>
        File.ReadAllTextAsync(
            Path.Combine(Folder, name + ".html"),
            TestContext.Current.CancellationToken
        );

    private static async Task<string[]> Unlike(IPage page, byte[] seen, byte[] shown)
    {
        const string Worst = """
            async ([seen, shown, cells]) => {
              const pixels = async code => {
                const image = await createImageBitmap(new Blob([Uint8Array.from(atob(code), c => c.charCodeAt(0))]));
                const canvas = new OffscreenCanvas(image.width, image.height);
                const on = canvas.getContext('2d');
                on.drawImage(image, 0, 0);
                return { width: image.width, height: image.height, data: on.getImageData(0, 0, image.width, image.height).data };
              };
              const [a, b] = [await pixels(seen), await pixels(shown)];
              if (a.width !== b.width || a.height !== b.height) return cells.map(() => 255);
              const block = (p, x, y, channel) => {
                let sum = 0;
                for (let j = 0; j < 8; j++) for (let i = 0; i < 8; i++) sum += p.data[4 * ((y + j) * p.width + x + i) + channel];
                return sum / 64;
              };
              return cells.map(([x0, y0, width, height]) => {
                let worst = 0;
                for (let y = y0; y + 8 <= y0 + height; y += 8)
                  for (let x = x0; x + 8 <= x0 + width; x += 8)
                    for (let channel = 0; channel < 3; channel++)
                      worst = Math.max(worst, Math.abs(block(a, x, y, channel) - block(b, x, y, channel)));
                return worst;
              });
            }
            """;
        var cells = Cells().ToArray();
        var worst = await page.EvaluateAsync<double[]>(
            Worst,
            new object[]
            {
                Convert.ToBase64String(seen),
                Convert.ToBase64String(shown),
                cells.Select(c => new[] { c.At.X, c.At.Y, c.At.Width, c.At.Height }).ToArray(),
            }
        );
        return
        [
            .. cells
                .Zip(worst)
                .Where(p => p.Second > Most)
                .Select(p =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{p.First.Name}: a block is off by {p.Second:0} of 255"
                    )
                ),
        ];
    }
}
