using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>Proof of heat, from pasted readings to the paper, with and without script.</summary>
[Collection(BrowserTests.Name)]
public sealed class HeatProofTests(FilledSite filled)
{
    private static readonly string Log =
        "day,probe,temperature_c,event\n"
        + string.Join(
            "\n",
            Enumerable
                .Range(1, 16)
                .SelectMany(d =>
                    new[] { $"{d},core,{60 + (d % 5)},{(d % 3 == 0 ? "turn" : "")}" }.Concat(
                        d is 5 or 11 ? [] : [$"{d},edge,{55 + (d % 4)},"]
                    )
                )
        );

    [Theory]
    [InlineData("light", 390, 844, false)]
    [InlineData("dark", 390, 844, true)]
    [InlineData("light", 1280, 800, true)]
    [InlineData("dark", 1280, 800, false)]
    public async Task Readings_Pasted_AreAnsweredOnThePageAndOnPaper(
        string theme,
        int width,
        int height,
        bool script
    )
    {
        var page = await filled.Site.Visit(script, width, height, theme);
        await page.GotoAsync("/heat-proof");
        await page.GetByLabel("Paste the readings").FillAsync(Log);
        await page.GetByLabel("Windrow, turned").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "See what it shows" }).ClickAsync();

        await Assertions
            .Expect(page.GetByRole(AriaRole.Heading, new() { Name = "What the record shows" }))
            .ToBeVisibleAsync();
        await Assertions
            .Expect(
                page.Locator(".proofs > li")
                    .Filter(new() { HasText = "further reduction of pathogens: windrow" })
            )
            .ToContainTextAsync("Cannot tell");
        await Assertions
            .Expect(page.GetByText("edge: from day 4 to day 6, 48 hours"))
            .ToBeVisibleAsync();
        Assert.Equal(
            Log,
            (await page.GetByLabel("Paste the readings").InputValueAsync()).ReplaceLineEndings("\n")
        );
        Assert.True(
            await page.GetByLabel("Windrow, turned").IsCheckedAsync(),
            "the choice is forgotten"
        );
        await page.ScreenshotAsync(
            new PageScreenshotOptions
            {
                Path = Path.Combine(
                    RunningSite.Screens,
                    $"heat-proof-answered-{width}-{theme}.png"
                ),
                FullPage = true,
            }
        );
        await page.ScreenshotAsync(
            new PageScreenshotOptions
            {
                Path = Path.Combine(RunningSite.Screens, $"heat-proof-top-{width}-{theme}.png"),
            }
        );
        if (script)
        {
            Assert.Equal(
                0,
                await page.EvaluateAsync<int>(
                    "document.documentElement.scrollWidth - document.documentElement.clientWidth"
                )
            );
            Assert.Empty((await page.RunAxe()).Violations);
        }

        var download = await page.RunAndWaitForDownloadAsync(() =>
            page.GetByRole(AriaRole.Button, new() { Name = "PDF on A4" }).ClickAsync()
        );
        await using var file = await download.CreateReadStreamAsync();
        var start = new byte[4];
        await file.ReadExactlyAsync(start, TestContext.Current.CancellationToken);
        Assert.Equal("%PDF"u8.ToArray(), start);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Reading_Wrong_IsToldBesideTheFieldAndNothingTypedIsLost()
    {
        var page = await filled.Site.Visit(script: false);
        await page.GotoAsync("/heat-proof");
        await page.GetByLabel("Paste the readings").FillAsync("day,temperature_c\n1,warm");
        await page.GetByRole(AriaRole.Button, new() { Name = "See what it shows" }).ClickAsync();

        await Assertions
            .Expect(page.Locator("#log-wrong"))
            .ToContainTextAsync("line 2, column temperature_c: \"warm\" is not a number");
        await Assertions
            .Expect(page.GetByLabel("Paste the readings"))
            .ToHaveValueAsync("day,temperature_c\n1,warm");
        await page.Context.CloseAsync();
    }
}
