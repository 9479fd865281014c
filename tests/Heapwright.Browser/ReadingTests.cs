using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>The reading page and its kin: two taps, read back, with and without script, in every theme.</summary>
[Collection(BrowserTests.Name)]
public sealed class ReadingTests(FilledSite filled)
{
    private string Reading => filled.Heap + "/reading";

    private static readonly (string Theme, int Width, int Height)[] Looks =
    [
        ("light", 390, 844),
        ("light", 1280, 800),
        ("dark", 390, 844),
        ("dark", 1280, 800),
        ("sun", 1280, 800),
        ("sun", 390, 844),
    ];

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
            foreach (
                var (theme, width, height) in url == Reading
                    ? Looks
                    : Looks.Where(l => l is ("light", 390, _) or ("sun", 1280, _))
            )
            {
                await page.SetViewportSizeAsync(width, height);
                await page.EvaluateAsync(
                    "theme => document.documentElement.dataset.theme = theme",
                    theme
                );
                complaints.AddRange(await Look(page, url, theme, width));
            }
        }

        Assert.Equal([], complaints);
        await page.Context.CloseAsync();
    }

    private static async Task<List<string>> Look(IPage page, string url, string theme, int width)
    {
        var complaints = new List<string>();
        var name =
            url == "/reading"
                ? "which"
                : url.Split('/')[^1].Replace("?", "-", StringComparison.Ordinal);
        await page.ScreenshotAsync(
            new PageScreenshotOptions
            {
                Path = Path.Combine(RunningSite.Screens, $"phone-{name}-{width}-{theme}.png"),
                FullPage = true,
            }
        );
        if (
            await page.EvaluateAsync<int>(
                "document.documentElement.scrollWidth - document.documentElement.clientWidth"
            ) > 0
        )
        {
            complaints.Add($"{url}, {width}: wider than the window");
        }

        var small = await page.EvaluateAsync<string[]>(
            """
            [...document.querySelectorAll('.key input')]
              .map(k => [k, k.getBoundingClientRect()])
              .filter(([, r]) => r.height < 52 || r.width < 44)
              .map(([k, r]) => `${k.name} ${k.value} ${r.width}x${r.height}`)
            """
        );
        complaints.AddRange(small.Select(s => $"{url}, {width}: small key {s}"));
        complaints.AddRange(
            (await page.RunAxe(Rules(theme, width))).Violations.Select(v =>
                $"{url}, {theme}, {width}: {v.Id} ({v.Help}): {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}"
            )
        );
        return complaints;
    }

    // Themes change colours and windows change sizes; the rest is the same in all looks, and looked at once.
    private static AxeRunOptions Rules(string theme, int width) =>
        (theme, width) == ("light", 390)
            ? new AxeRunOptions()
            : new AxeRunOptions
            {
                RunOnly = new RunOnlyOptions
                {
                    Type = "rule",
                    Values = ["color-contrast", "target-size", "scrollable-region-focusable"],
                },
            };

    [Fact]
    public async Task Reading_WithoutScript_IsReadBackAndKept()
    {
        var page = await filled.Site.Visit(script: false, width: 390, height: 844);
        await page.GotoAsync(Reading);
        await Assertions.Expect(page.Locator(".said")).ToBeHiddenAsync();
        await page.Tap("tens", "40");
        await page.Tap("units", "3");
        await Assertions.Expect(page.Locator(".said")).ToBeVisibleAsync();
        Assert.True(await page.GetByText("keep away").First.IsHiddenAsync());
        await page.Tap("smell", "sour");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save reading" }).ClickAsync();

        await Assertions.Expect(page.GetByText("It is in the diary.")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#ledger")).ToContainTextAsync("43 °C, core");
        await Assertions.Expect(page.Locator("#ledger")).ToContainTextAsync("smelt: sour");
        await page.Context.CloseAsync();
    }
}
