using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>Everything can be done from the keyboard, and the focus stays where the hand is.</summary>
[Collection(BrowserTests.Name)]
public sealed class KeyboardTests(FilledSite filled)
{
    [Fact]
    public async Task Tab_FromTheTop_ReachesTheSkipLinkFirst()
    {
        var page = await filled.Site.Visit();
        await page.GotoAsync("/stock");
        await page.EvaluateAsync("document.activeElement.blur()");
        await page.Keyboard.PressAsync("Tab");

        Assert.Equal("Skip to the page", await Focused(page));
        await page.Keyboard.PressAsync("Enter");
        Assert.Equal("content", await page.EvaluateAsync<string>("document.activeElement.id"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Plus_PressedByKeyboard_CountsAndKeepsTheFocus()
    {
        var page = await filled.Site.Visit();
        await page.GotoAsync("/mix");
        var first = page.Locator(".goods li").First;
        var before = int.Parse(
            await first.Locator("output").InnerTextAsync(),
            System.Globalization.CultureInfo.InvariantCulture
        );
        var plus = first.GetByRole(AriaRole.Button).Nth(1);
        var unfolded = page.Locator("main details.card").First;
        await unfolded.EvaluateAsync("d => d.open = true");
        await plus.FocusAsync();
        await page.Keyboard.PressAsync("Enter");

        await Assertions
            .Expect(first.Locator("output"))
            .ToHaveTextAsync(
                (before + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)
            );
        await Assertions.Expect(plus).ToBeFocusedAsync();
        await Assertions.Expect(unfolded).ToHaveAttributeAsync("open", "");
        await page.Keyboard.PressAsync("Enter");
        await Assertions
            .Expect(first.Locator("output"))
            .ToHaveTextAsync(
                (before + 2).ToString(System.Globalization.CultureInfo.InvariantCulture)
            );
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Tap_AnsweredOnTheSamePage_LeavesThePageWhereItWasAndIsReadAloud()
    {
        var page = await filled.Site.Visit(true, 390, 844);
        await page.GotoAsync("/stock");
        var last = page.Locator(".goods li").Last.GetByRole(AriaRole.Button).Last;
        await last.ScrollIntoViewIfNeededAsync();
        var before = await page.EvaluateAsync<double>("scrollY");
        await last.ClickAsync();

        await Assertions.Expect(page.Locator("[data-aloud]")).Not.ToBeEmptyAsync();
        await Assertions
            .Expect(page.Locator("[data-aloud]"))
            .ToContainTextAsync(await page.Locator(".notice p").InnerTextAsync());
        Assert.True(before > 200);
        Assert.InRange(await page.EvaluateAsync<double>("scrollY"), before - 1, before + 1);

        // Another page begins at its top.
        await page.GotoAsync("/mix");
        Assert.Equal(0, await page.EvaluateAsync<double>("scrollY"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Reading_ByKeyboardAlone_IsTakenAndKept()
    {
        var page = await filled.Site.Visit();
        await page.GotoAsync(filled.Heap + "/reading");
        await page.EvaluateAsync("document.activeElement.blur()");
        for (var i = 0; i < 20 && await Name(page) != "tens"; i++)
        {
            await page.Keyboard.PressAsync("Tab");
        }

        // The first arrow chooses the next key: 10; one more, 20. Then the units, 1 and 2 and 3.
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("Tab");
        Assert.Equal("units", await Name(page));
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(page.Locator("[data-said-words]")).ToHaveTextAsync("23");
        await page.Keyboard.PressAsync("Enter");

        await page.WaitForURLAsync("**/heaps/*?kept=1*");
        await Assertions.Expect(page.Locator("#ledger").Locator("..")).ToContainTextAsync("23 °C");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Buttons_OnEveryPage_AreBigEnoughForGloves()
    {
        var page = await filled.Site.Visit(true, 390, 844);
        var small = new List<string>();
        foreach (var url in filled.Pages)
        {
            await page.GotoAsync(url);
            small.AddRange(
                await page.EvaluateAsync<string[]>(
                    """
                    () => [...document.querySelectorAll('button, a.deed, .chips label, summary, nav a')]
                      .filter(e => e.offsetParent !== null && !e.classList.contains('skip'))
                      .map(e => [e, e.getBoundingClientRect()])
                      .filter(([, r]) => r.width > 0 && (r.height < 44 || r.width < 44))
                      .map(([e, r]) => `${location.pathname} ${e.textContent.trim().slice(0, 30)} ${Math.round(r.width)}x${Math.round(r.height)}`)
                    """
                )
            );
        }

        Assert.Equal([], small);
        await page.Context.CloseAsync();
    }

    private static Task<string> Name(IPage page) =>
        page.EvaluateAsync<string>("document.activeElement.name ?? ''");

    private static Task<string> Focused(IPage page) =>
        page.EvaluateAsync<string>("document.activeElement.textContent.trim()");
}
