using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>Every page: no barrier found, nothing runs out at the side, nothing is refused by the page's own rules.</summary>
[Collection(BrowserTests.Name)]
public sealed class LookTests(FilledSite filled)
{
    [Fact]
    public async Task Pages_InEveryTheme_HaveNoBarrierAndFitTheWindow()
    {
        // Two tabs at once: a tab lays out, and is searched, on one processor only.
        var complaints = await Task.WhenAll(
            filled.Pages.Index().GroupBy(p => p.Index % 2).Select(g => Complaints([.. g]))
        );

        Assert.True(
            complaints.All(c => c.Count == 0),
            string.Join(Environment.NewLine, complaints.SelectMany(c => c))
        );
    }

    private async Task<List<string>> Complaints(IReadOnlyList<(int Index, string Url)> pages)
    {
        var page = await filled.Site.Visit(true, 390, 844);
        var complaints = new List<string>();
        page.Console += (_, message) =>
        {
            if (message.Type == "error" && !message.Text.Contains("404", StringComparison.Ordinal))
            {
                complaints.Add($"{page.Url}: {message.Text}");
            }
        };
        page.PageError += (_, error) => complaints.Add($"{page.Url}: {error}");
        // In dark the pairs of colours are computed in tests of their own; a third of the pages shows that no page mixes
        // them otherwise, and HEAPWRIGHT_ALL_LOOKS=1 looks at all of them.
        var everyLook = Environment.GetEnvironmentVariable("HEAPWRIGHT_ALL_LOOKS") == "1";
        foreach (var (i, url) in pages)
        {
            var usual =
                everyLook || i % 3 == 0
                    ? Looks.Usual
                    : [.. Looks.Usual.Where(l => l.Theme != "dark")];
            await page.GotoAsync(url, new PageGotoOptions { WaitUntil = WaitUntilState.Load });
            var name = url.Split('?')[0].Trim('/').Replace('/', '-');
            name =
                url == filled.Sheet ? "sheet"
                : url == filled.Entry ? "entry"
                : url == filled.Backup ? "backup-look"
                : url == filled.Shared ? "shared"
                : name.Length == 0 ? "yard"
                : name;
            complaints.AddRange(await Looks.Complaints(page, name, url == "/" ? Looks.All : usual));
        }

        await page.Context.CloseAsync();
        return complaints;
    }

    [Fact]
    public async Task Axe_PageWithAPlantedBarrier_FindsIt()
    {
        var page = await filled.Site.Visit();
        await page.GotoAsync("/more");
        await page.EvaluateAsync(
            "document.querySelector('main').appendChild(document.createElement('img')).src = '/icon.svg'"
        );

        Assert.Contains((await page.RunAxe()).Violations, v => v.Id == "image-alt");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Look_PageWhoseWordsAStyleHides_SaysSo()
    {
        var page = await filled.Site.Visit();
        await page.GotoAsync("/more");
        await page.EvaluateAsync("document.querySelector('h1').classList.add('brand')");

        var complaints = await Looks.Complaints(
            page,
            "planted",
            [new Look("light", 390, 844, null)]
        );

        Assert.Contains(
            "nobody sees H1 brand",
            Assert.Single(complaints),
            StringComparison.Ordinal
        );
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Sheet_Printed_FitsOnePageOfA4()
    {
        var page = await filled.Site.Visit();
        await page.GotoAsync(filled.Sheet);
        var pdf = await page.PdfAsync(
            new PagePdfOptions { Format = "A4", PreferCSSPageSize = false }
        );
        await File.WriteAllBytesAsync(
            Path.Combine(RunningSite.Screens, "sheet-print.pdf"),
            pdf,
            TestContext.Current.CancellationToken
        );
        var text = System.Text.Encoding.Latin1.GetString(pdf);

        Assert.Equal(
            1,
            System.Text.RegularExpressions.Regex.Count(
                text,
                @"/Type\s*/Page\b",
                System.Text.RegularExpressions.RegexOptions.None,
                TimeSpan.FromSeconds(5)
            )
        );
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Pdf_OfASheet_IsAPdfOnBothPapers()
    {
        var page = await filled.Site.Visit();
        foreach (var paper in new[] { "a4", "letter" })
        {
            var answer = await page.APIRequest.GetAsync(filled.Sheet + "/pdf?paper=" + paper);

            Assert.Equal(200, answer.Status);
            Assert.StartsWith(
                "%PDF-",
                System.Text.Encoding.Latin1.GetString(await answer.BodyAsync()),
                StringComparison.Ordinal
            );
        }

        await page.Context.CloseAsync();
    }
}
