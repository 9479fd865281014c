using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>German: its longer words fit a phone, and what the phone keeps follows the language.</summary>
[Collection(BrowserTests.Name)]
public sealed class LanguageTests(FilledSite filled)
{
    [Fact]
    public async Task Pages_InGerman_FitANarrowWindow()
    {
        var page = await filled.Site.Visit(true, 390, 844);
        await page.GotoAsync("/language?set=de&back=%2F");
        var complaints = new List<string>();
        foreach (
            var url in new[]
            {
                "/",
                "/stock",
                "/mix",
                "/recipe",
                filled.Sheet,
                filled.Heap,
                filled.Heap + "/reading",
                "/signs?a=worry:not_heating&a=signs.smell:rotten",
                "/finish",
                "/heat-proof",
                "/settings",
                "/more",
            }
        )
        {
            await page.GotoAsync(url);
            Assert.Equal("de", await page.EvaluateAsync<string>("document.documentElement.lang"));
            complaints.AddRange(
                await Looks.Complaints(
                    page,
                    "de-" + url.Split('?')[0].Trim('/').Replace('/', '-'),
                    [new Look("light", 390, 844, null)]
                )
            );
        }

        Assert.Equal([], complaints);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Copies_AfterAnotherLanguageWasChosen_AreAllInThatLanguage()
    {
        var page = await filled.Site.Visit(true, 390, 844, worker: true);
        await page.GotoAsync("/");
        await page.EvaluateAsync("navigator.serviceWorker.ready.then(() => 0)");
        await page.GotoAsync("/settings");
        await Kept(page, "/settings", "en");

        await page.GotoAsync("/language?set=de&back=%2F");
        await Kept(page, "/outbox", "de");
        await Kept(page, "/settings", "");
        await page.Context.SetOfflineAsync(true);
        await page.GotoAsync("/settings");

        await Assertions
            .Expect(page.GetByText("Keine Verbindung, und die gewünschte Seite"))
            .ToBeVisibleAsync();
        await page.Context.CloseAsync();
    }

    // Comes back once what is kept of a page is in a language; with an empty one, once nothing is kept.
    private static Task Kept(IPage page, string url, string language) =>
        page.EvaluateAsync(
                """
                async ([url, language]) => {
                  while (((await caches.match(url, { ignoreVary: true }))?.headers.get('content-language') ?? '') !== language)
                    await new Promise(go => setTimeout(go, 50));
                }
                """,
                new[] { url, language }
            )
            .WaitAsync(TimeSpan.FromSeconds(30));
}
