using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>Watching a heap: by finger, by keyboard and without script; and from a sheet and a plan.</summary>
[Collection(BrowserTests.Name)]
public sealed class WatchTests(FilledSite filled)
{
    [Fact]
    public async Task Slider_ByKeyboard_BringsTheNextDayForward()
    {
        var page = await filled.Site.Visit(true, 390, 844);
        await page.GotoAsync("/watch?day=4");
        var slider = page.Locator("input[type=range]");
        await slider.FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");

        await Assertions.Expect(page.Locator("[data-words-here]")).ToContainTextAsync("Day 5:");
        await Assertions
            .Expect(page.Locator("[data-heat] > g[data-day]:not([display])"))
            .ToHaveCountAsync(1);
        Assert.Equal(
            "5",
            await page.Locator("[data-heat] > g[data-day]:not([display])")
                .GetAttributeAsync("data-day")
        );
        Assert.StartsWith(
            "Day 5:",
            await page.Locator("[data-heat]").GetAttributeAsync("aria-label"),
            StringComparison.Ordinal
        );
        Assert.Contains("day=5", page.Url, StringComparison.Ordinal);
        await page.GetByLabel("A day later").ClickAsync();
        await Assertions.Expect(page.Locator("[data-words-here]")).ToContainTextAsync("Day 6:");
        // Another what-if keeps the day.
        await page.GetByLabel("Cover").SelectOptionAsync("lid");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show how that would go" })
            .ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(Part("cover=lid"));
        await Assertions.Expect(page.Locator("[data-words-here]")).ToContainTextAsync("Day 6:");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Days_LeftToRun_ComeForwardUntilStopped()
    {
        var page = await filled.Site.Visit();
        await page.GotoAsync("/watch?day=1");
        var play = page.Locator("[data-play]");
        await Assertions.Expect(play).ToHaveTextAsync("Let the days run");
        await play.ClickAsync();
        await Assertions.Expect(play).ToHaveTextAsync("Stop");
        // A busy machine may not see every day go by.
        await Assertions
            .Expect(page.Locator("[data-words-here]"))
            .ToContainTextAsync(
                new Regex("Day [3-9]:|Day [1-9][0-9]:", RegexOptions.None, TimeSpan.FromSeconds(1))
            );
        await play.ClickAsync();
        await Assertions.Expect(play).ToHaveTextAsync("Let the days run");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Day_WithoutScript_IsAskedByTheForm()
    {
        var page = await filled.Site.Visit(false, 390, 844);
        await page.GotoAsync("/watch?day=4");
        await page.Locator("input[type=range]").FillAsync("9");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show this day" }).ClickAsync();

        await Assertions.Expect(page).ToHaveURLAsync(Part("day=9"));
        await Assertions.Expect(page.Locator("[data-words-here]")).ToContainTextAsync("Day 9:");
        await Assertions.Expect(page.Locator("[data-play]")).ToBeHiddenAsync();
        await page.GetByLabel("A day later").ClickAsync();
        await Assertions.Expect(page.Locator("[data-words-here]")).ToContainTextAsync("Day 10:");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Heap_OfASheetAndOfAPlan_CanBeWatched()
    {
        var page = await filled.Site.Visit();
        foreach (var from in new[] { filled.Sheet, "/recipe", "/mix" })
        {
            await page.GotoAsync(from);
            await page.GetByRole(AriaRole.Link, new() { Name = "Watch how it would go" })
                .First.ClickAsync();
            await Assertions
                .Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 }))
                .ToHaveTextAsync("How it would go");
            await Assertions.Expect(page.Locator("[data-heat]")).ToBeVisibleAsync();
        }

        await page.Context.CloseAsync();
    }

    private static Regex Part(string text) =>
        new(Regex.Escape(text), RegexOptions.None, TimeSpan.FromSeconds(1));
}
