using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>The reading page and its kin: two taps, read back, with and without script, in every theme.</summary>
[Collection(BrowserTests.Name)]
public sealed class ReadingTests(FilledSite filled)
{
    private string Reading => filled.Heap + "/reading";

    [Fact]
    public async Task Draft_LeftBehind_IsThereAgainAndGoesWhenItIsKept()
    {
        var page = await filled.Site.Visit(true, 390, 844);
        await page.GotoAsync(filled.Heap);
        await page.Locator("summary")
            .Filter(
                new()
                {
                    HasTextRegex = new System.Text.RegularExpressions.Regex(
                        "^A note$",
                        System.Text.RegularExpressions.RegexOptions.None,
                        TimeSpan.FromSeconds(1)
                    ),
                }
            )
            .ClickAsync();
        await page.Locator("textarea[name=text]").FillAsync("A hedgehog at the east side.");
        await page.GotoAsync("/stock");
        await page.GotoAsync(filled.Heap);
        await Assertions
            .Expect(page.Locator("textarea[name=text]"))
            .ToHaveValueAsync("A hedgehog at the east side.");
        await Assertions.Expect(page.Locator("textarea[name=text]")).ToBeVisibleAsync();

        await page.GotoAsync(Reading);
        await page.Tap("tens", "40");
        await page.Tap("units", "7");
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("[data-said-words]")).ToHaveTextAsync("47");

        await page.GotoAsync(filled.Heap);
        await page.Locator("form")
            .Filter(new() { Has = page.Locator("textarea[name=text]") })
            .Locator("button[type=submit]")
            .ClickAsync();
        await Assertions.Expect(page.Locator("#ledger")).ToContainTextAsync("hedgehog");
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("textarea[name=text]")).ToHaveValueAsync("");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Pages_ForThePhoneInEveryTheme_HaveNoBarrierAndFit()
    {
        var page = await filled.Site.Visit(true, 390, 844);
        var complaints = new List<string>();
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
            {
                complaints.Add($"{page.Url}: {message.Text}");
            }
        };
        page.PageError += (_, error) => complaints.Add($"{page.Url}: {error}");
        foreach (
            var url in new[]
            {
                Reading,
                Reading + "?unit=f",
                "/reading",
                "/outbox",
                "/label",
                "/pair",
            }
        )
        {
            await page.GotoAsync(url, new PageGotoOptions { WaitUntil = WaitUntilState.Load });
            if (url == Reading)
            {
                await page.Tap("tens", "70");
                await page.Tap("units", "6");
                await page.Tap("smell", "smoke");
                await Assertions.Expect(page.Locator("[data-said-words]")).ToHaveTextAsync("76");
                await Assertions.Expect(page.GetByText("keep away").First).ToBeVisibleAsync();
            }

            // The first page in every look; the others are made of the same parts.
            var looks =
                url == Reading
                    ? Looks.All
                    : Looks.All.Where(l =>
                        l is { Theme: "light", Width: 390 } or { Theme: "sun", Width: 1280 }
                    );
            var name =
                url == "/reading"
                    ? "which"
                    : url.Split('/')[^1].Replace("?", "-", StringComparison.Ordinal);
            await page.SetViewportSizeAsync(390, 844);
            complaints.AddRange((await SmallKeys(page)).Select(s => $"{url}: small key {s}"));
            complaints.AddRange(await Looks.Complaints(page, "phone-" + name, looks));
            complaints.AddRange((await SmallKeys(page)).Select(s => $"{url}, wide: small key {s}"));
        }

        Assert.Equal([], complaints);
        await page.Context.CloseAsync();
    }

    private static Task<string[]> SmallKeys(IPage page) =>
        page.EvaluateAsync<string[]>(
            """
            [...document.querySelectorAll('.key input')]
              .map(k => [k, k.getBoundingClientRect()])
              .filter(([, r]) => r.height < 52 || r.width < 44)
              .map(([k, r]) => `${k.name} ${k.value} ${r.width}x${r.height}`)
            """
        );

    [Fact]
    public async Task Reading_WithoutScript_IsReadBackAndKept()
    {
        var page = await filled.Site.Visit(script: false, width: 390, height: 844);
        await page.GotoAsync(Reading);
        await Assertions.Expect(page.Locator(".readback")).ToBeHiddenAsync();
        await page.Tap("tens", "40");
        await page.Tap("units", "3");
        await Assertions.Expect(page.Locator(".readback")).ToBeVisibleAsync();
        Assert.True(await page.GetByText("keep away").First.IsHiddenAsync());
        await page.Tap("smell", "sour");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save reading" }).ClickAsync();

        await Assertions.Expect(page.GetByText("It is in the diary.")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#ledger")).ToContainTextAsync("43 °C, core");
        await Assertions.Expect(page.Locator("#ledger")).ToContainTextAsync("smelt: sour");
        await page.Context.CloseAsync();
    }
}
