using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>
/// The pictures of the documentation, all of the sample garden and its batch. HEAPWRIGHT_PICTURES=1 makes them anew;
/// otherwise what the pages say now, without figures and dates, and the style sheet are held against what they said then.
/// </summary>
[Collection(BrowserTests.Name)]
public sealed partial class GuidePictureTests : IAsyncLifetime
{
    private readonly SampleSite sample = new();

    private const string StyleMark = "style.sha256";

    private static string Folder => KeptPictures.FolderOf("docs", "guide", "pictures");

    public ValueTask InitializeAsync() => sample.InitializeAsync();

    public ValueTask DisposeAsync() => sample.DisposeAsync();

    [Fact]
    public async Task Pictures_OfTheGuide_ShowWhatThePagesSayNow()
    {
        var stale = new List<string>();
        Directory.CreateDirectory(Folder);
        foreach (var (name, url, width, height) in Pages())
        {
            var page = await sample.Site.Visit(true, width, height);
            await page.GotoAsync(url, new PageGotoOptions { WaitUntil = WaitUntilState.Load });
            for (var i = 0; KeptPictures.AreMade && i < 30 && await IsThinking(page); i++)
            {
                await page.WaitForTimeoutAsync(2000);
                await page.ReloadAsync();
            }

            var said = Plain(await Said(page));
            var text = Path.Combine(Folder, name + ".txt");
            if (KeptPictures.AreMade)
            {
                await page.ScreenshotAsync(
                    new PageScreenshotOptions { Path = Path.Combine(Folder, name + ".png") }
                );
                await File.WriteAllTextAsync(text, said, TestContext.Current.CancellationToken);
            }
            else if (
                !File.Exists(text)
                || await File.ReadAllTextAsync(text, TestContext.Current.CancellationToken) != said
            )
            {
                stale.Add($"{name}: {url} no longer says what {name}.txt has; it says: {said}");
            }

            await page.Context.CloseAsync();
        }

        await HoldStyle(stale);
        Assert.True(stale.Count == 0, string.Join("\n", stale));
    }

    private static async Task<bool> IsThinking(IPage page) =>
        await page.GetByText("Look again in a minute").CountAsync() > 0;

    // The next step of a heap is computed for this very hour, and whether the round is offered with it.
    private static async Task<string> Said(IPage page)
    {
        const string Hide =
            "away => document.querySelectorAll('.step, .head.with-deed > a').forEach(e => { e.hidden = away; })";
        await page.EvaluateAsync(Hide, true);
        var said = await page.Locator("main").InnerTextAsync();
        await page.EvaluateAsync(Hide, false);
        return said;
    }

    private async Task HoldStyle(List<string> stale)
    {
        var page = await sample.Site.Visit();
        var style = await (await page.APIRequest.GetAsync("/heap.css")).BodyAsync();
        var hash = Convert.ToHexStringLower(SHA256.HashData(style)) + "\n";
        var mark = Path.Combine(Folder, StyleMark);
        if (KeptPictures.AreMade)
        {
            await File.WriteAllTextAsync(mark, hash, TestContext.Current.CancellationToken);
        }
        else if (await File.ReadAllTextAsync(mark, TestContext.Current.CancellationToken) != hash)
        {
            stale.Add("heap.css is another one than when the pictures were made");
        }

        await page.Context.CloseAsync();
    }

    // From the stock to the bed. What is computed for this very hour, such as a forecast, is left out.
    private IEnumerable<(string Name, string Url, int Width, int Height)> Pages()
    {
        const int Phone = 390;
        const int High = 844;
        return
        [
            ("build-sheet", sample.Sheet, 1280, 1000),
            ("yard", "/", Phone, High),
            ("stock", "/stock", Phone, High),
            ("heap-record", sample.Heap + "/record", Phone, High),
            ("heap-finish", sample.Heap + "/finish?bed=Long+bed&area=8&crop=squash", Phone, High),
            ("where", "/where?name=nether", Phone, High),
        ];
    }

    private static string Plain(string text)
    {
        var plain = new StringBuilder();
        foreach (var line in Digits().Replace(text, "#").Split('\n'))
        {
            if (line.Trim() is { Length: > 0 } said)
            {
                plain.Append(Months().Replace(said, "Month")).Append('\n');
            }
        }

        return plain.ToString();
    }

    [GeneratedRegex("[0-9a-f]{32,}|[0-9]+", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Digits();

    [GeneratedRegex(
        @"\b(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sept?|Oct|Nov|Dec)\b",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Months();
}
