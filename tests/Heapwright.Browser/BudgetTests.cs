using System.Globalization;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>
/// What a page weighs and how soon it can be read on a phone: four times slower than this machine, on a slow mobile
/// network. Weights are tested; times depend on what else the machine does, so they are only told.
/// </summary>
[Collection(BrowserTests.Name)]
public sealed class BudgetTests(FilledSite filled)
{
    private const int MostBytes = 80_000;

    // A slow third-generation network.
    private const double LatencyMilliseconds = 562.5;
    private const int DownBytesPerSecond = 188_744;
    private const int UpBytesPerSecond = 86_400;

    [Fact]
    public async Task Pages_AtFirstLoadOnAPhone_WeighLessThanTheyMay()
    {
        Assert.SkipWhen(
            RunningSite.Published is null,
            "the weights are those of the published site: HEAPWRIGHT_WEB names no folder"
        );
        var heavy = new List<string>();
        foreach (
            var url in new[]
            {
                "/",
                "/round",
                filled.Heap,
                filled.Heap + "/reading",
                filled.Sheet,
                "/mix",
                "/stock",
                "/guide/heat",
            }
        )
        {
            var page = await filled.Site.Visit(true, 390, 844);
            var wire = await page.Context.NewCDPSessionAsync(page);
            var bytes = 0.0;
            wire.Event("Network.loadingFinished").OnEvent += (_, e) =>
                bytes += e!.Value.GetProperty("encodedDataLength").GetDouble();
            await wire.SendAsync("Network.enable");
            await wire.SendAsync(
                "Network.emulateNetworkConditions",
                new Dictionary<string, object>
                {
                    ["offline"] = false,
                    ["latency"] = LatencyMilliseconds,
                    ["downloadThroughput"] = DownBytesPerSecond,
                    ["uploadThroughput"] = UpBytesPerSecond,
                }
            );
            await wire.SendAsync(
                "Emulation.setCPUThrottlingRate",
                new Dictionary<string, object> { ["rate"] = 4 }
            );
            await page.GotoAsync(
                url,
                new PageGotoOptions { WaitUntil = WaitUntilState.NetworkIdle }
            );
            var (paint, usable) = (
                await page.EvaluateAsync<double>(
                    "performance.getEntriesByName('first-contentful-paint')[0].startTime"
                ),
                await page.EvaluateAsync<double>(
                    "performance.getEntriesByType('navigation')[0].domContentLoadedEventEnd"
                )
            );
            var told = string.Create(
                CultureInfo.InvariantCulture,
                $"{url}: {bytes / 1000:0.0} kB, first paint {paint:0} ms, usable {usable:0} ms"
            );
            TestContext.Current.TestOutputHelper?.WriteLine(told);
            if (bytes is 0 or > MostBytes)
            {
                heavy.Add(told);
            }

            await page.Context.CloseAsync();
        }

        Assert.Equal([], heavy);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/recipe")]
    public async Task Page_WhereLessMotionIsWanted_HasNone(string url)
    {
        var page = await filled.Site.Visit();
        Assert.NotEqual(0, await Moving(page, url));

        await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        Assert.Equal(0, await Moving(page, url));
        await page.Context.CloseAsync();
    }

    private static async Task<int> Moving(IPage page, string url)
    {
        await page.GotoAsync(url);
        return await page.EvaluateAsync<int>(
            """
            () => [...document.querySelectorAll('*')].map(e => getComputedStyle(e))
              .filter(s => parseFloat(s.transitionDuration) > 0 || parseFloat(s.animationDuration) > 0).length
            """
        );
    }
}
