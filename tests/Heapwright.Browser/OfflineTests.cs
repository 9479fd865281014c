using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>
/// Beside the heap without signal: whatever is cut, and whenever, a reading that was saved reaches the diary once.
/// </summary>
[Collection(BrowserTests.Name)]
public sealed class OfflineTests(PhoneSite phone) : IClassFixture<PhoneSite>
{
    private static int Runs =>
        int.TryParse(
            Environment.GetEnvironmentVariable("HEAPWRIGHT_OFFLINE_RUNS"),
            CultureInfo.InvariantCulture,
            out var runs
        )
            ? runs
            : 4;

    private static int Seed =>
        int.TryParse(
            Environment.GetEnvironmentVariable("HEAPWRIGHT_OFFLINE_SEED"),
            CultureInfo.InvariantCulture,
            out var seed
        )
            ? seed
            : 20261128;

    [Fact]
    public async Task Pages_WithoutSignal_AreTheirLastCopiesAndSaySo()
    {
        var page = await Phone();
        await page.GotoAsync(phone.Heap);
        await page.Context.SetOfflineAsync(true);

        await page.GotoAsync(phone.Heap);
        await Assertions.Expect(page.GetByText("This page is a copy from")).ToBeVisibleAsync();
        await page.GotoAsync(phone.Reading);
        await Assertions.Expect(page.Locator("[name=tens]").First).ToBeAttachedAsync();
        await page.GotoAsync("/heaps/0198f3a07c1e7b609d2e3f1f6f0a4c11/reading");
        await Assertions.Expect(page.GetByText("Which heap?")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByText("is not kept on this phone")).ToBeVisibleAsync();
        await page.GotoAsync("/stock");
        await Assertions
            .Expect(page.GetByRole(AriaRole.Heading, new() { Name = "On this phone" }))
            .ToBeVisibleAsync();

        await page.Context.SetOfflineAsync(false);
        await page.GotoAsync(phone.Heap);
        await Assertions.Expect(page.GetByText("This page is a copy from")).ToBeHiddenAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Label_WithoutSignal_LeadsToTheHeapInItsBay()
    {
        var page = await Phone();
        await page.GotoAsync("/label");
        // The first free bay of the sample, into which the heap was built.
        var text = await page.Locator(".labels li")
            .Filter(new() { HasText = "Middle bay" })
            .First.InnerTextAsync();
        var code = Regex
            .Match(
                text,
                "/b/(?<code>[A-Z0-9]{6})",
                RegexOptions.ExplicitCapture,
                TimeSpan.FromSeconds(1)
            )
            .Groups["code"]
            .Value;
        await page.GotoAsync("/b/" + code);
        Assert.EndsWith(phone.Reading, page.Url, StringComparison.Ordinal);
        await page.GotoAsync("/");
        await page.Context.SetOfflineAsync(true);

        await page.GotoAsync("/b/" + code);

        Assert.EndsWith(phone.Reading, page.Url, StringComparison.Ordinal);
        await Assertions.Expect(page.Locator("[name=tens]").First).ToBeAttachedAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Reading_WithPhotoSavedWithoutSignal_WaitsInSightAndIsSentOnceWithoutItsPlace()
    {
        var page = await Phone();
        await page.GotoAsync(phone.Reading);
        await page.Context.SetOfflineAsync(true);
        await page.ReloadAsync();
        await page.Tap("tens", "50");
        await page.Tap("units", "1");
        await page.Tap("squeeze", "sponge");
        await page.SetInputFilesAsync(
            "[name=photo]",
            new FilePayload
            {
                Name = "heap.jpg",
                MimeType = "image/jpeg",
                Buffer = await Picture(page),
            }
        );
        await page.Save();
        await Assertions.Expect(page.GetByText("1 reading waits on this phone")).ToBeVisibleAsync();
        await page.GotoAsync("/");
        await Assertions.Expect(page.GetByText("1 reading waits on this phone")).ToBeVisibleAsync();

        await page.Context.SetOfflineAsync(false);
        await page.EvaluateAsync(
            "dispatchEvent(new Event('online')), dispatchEvent(new Event('online'))"
        );
        await Waiting(page, 0);

        var ledger = await phone.Ledger(page);
        Assert.Equal(1, ledger.Count(e => e.StartsWith("51 °C", StringComparison.Ordinal)));
        Assert.Equal(1, ledger.Count(e => e.StartsWith("squeezed", StringComparison.Ordinal)));
        await page.GotoAsync(phone.Heap);
        var link = await page.Locator("a:has(.thumb)").First.GetAttributeAsync("href");
        var bytes = await (await page.APIRequest.GetAsync(link!)).BodyAsync();
        Assert.DoesNotContain(
            "Exif",
            System.Text.Encoding.Latin1.GetString(bytes),
            StringComparison.Ordinal
        );
        var wide = await page.Locator(".thumb")
            .First.EvaluateAsync<int>(
                "async i => { i.loading = 'eager'; await i.decode(); return i.naturalWidth; }"
            );
        Assert.Equal(320, wide);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Entry_ThatIsRefused_NeedsALookAndHoldsNothingUp()
    {
        var page = await Phone();
        await page.GotoAsync(phone.Reading);
        await page.Context.SetOfflineAsync(true);
        await page.GetByText("Type it instead").ClickAsync();
        await page.FillAsync("#temperature", "99999");
        await page.Save();
        await Waiting(page, 1);
        await page.Tap("tens", "40");
        await page.Tap("units", "2");
        await page.Save();
        await Waiting(page, 2);

        await page.Context.SetOfflineAsync(false);
        await page.GotoAsync("/outbox");
        await Assertions.Expect(page.GetByText("Needs a look")).ToBeVisibleAsync();
        await Waiting(page, 1);
        Assert.Equal(
            1,
            (await phone.Ledger(page)).Count(e => e.StartsWith("42 °C", StringComparison.Ordinal))
        );

        await page.GetByRole(AriaRole.Link, new() { Name = "Amend" }).ClickAsync();
        await Assertions.Expect(page.Locator("#temperature")).ToHaveValueAsync("99999");
        await page.Locator("#temperature").FillAsync("39");
        await page.Save();
        await Assertions.Expect(page.GetByText("It is in the diary.")).ToBeVisibleAsync();
        await Waiting(page, 0);
        Assert.Equal(
            1,
            (await phone.Ledger(page)).Count(e => e.StartsWith("39 °C", StringComparison.Ordinal))
        );
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Entry_ThrownAway_CanBeTakenBack()
    {
        var page = await Phone();
        await page.GotoAsync(phone.Reading);
        await page.Context.SetOfflineAsync(true);
        await page.Tap("smell", "ammonia");
        await page.Save();
        await Waiting(page, 1);
        await page.GotoAsync("/outbox");
        await page.GetByRole(AriaRole.Button, new() { Name = "Throw away" }).ClickAsync();
        await Waiting(page, 0);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).ClickAsync();
        await Waiting(page, 1);
        await page.GetByRole(AriaRole.Button, new() { Name = "Throw away" }).ClickAsync();
        await Waiting(page, 0);
        await page.Context.CloseAsync();
    }

    [Theory]
    [InlineData(401, "{\"error\":\"sign in\"}")]
    [InlineData(403, "{\"error\":\"let this device write\"}")]
    [InlineData(500, "oops")]
    [InlineData(200, "<html>Welcome to the hotel. Log in.</html>")]
    [InlineData(200, "{\"id\":\"another\"}")]
    public async Task Answer_ThatDoesNotSayKept_KeepsTheReadingHere(int status, string body)
    {
        var page = await phone.Site.Visit(width: 390, height: 844);
        await page.GotoAsync(phone.Reading);
        await page.RouteAsync(
            "**/outbox/*",
            r => r.FulfillAsync(new() { Status = status, Body = body })
        );
        await page.Tap("smell", "sweet");
        await page.Save();
        await Assertions.Expect(page.Locator("[data-outbox]")).ToBeVisibleAsync();
        await Assertions
            .Expect(page.Locator("[data-kept]"))
            .ToContainTextAsync("Kept on this phone");
        await Waiting(page, 1);
        Assert.Equal(
            0,
            await page.EvaluateAsync<int>("async () => (await all()).filter(i => i.why).length")
        );
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Script_Compressed_StaysSmall()
    {
        var page = await phone.Site.Visit();
        var bytes = 0L;
        foreach (var file in new[] { "/heap.js", "/sw.js" })
        {
            var text = await (await page.APIRequest.GetAsync(file)).BodyAsync();
            using var packed = new MemoryStream();
            await using (
                var brotli = new System.IO.Compression.BrotliStream(
                    packed,
                    System.IO.Compression.CompressionLevel.SmallestSize,
                    leaveOpen: true
                )
            )
            {
                await brotli.WriteAsync(text, TestContext.Current.CancellationToken);
            }

            bytes += packed.Length;
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"heap.js and sw.js: {bytes} bytes");
        Assert.InRange(bytes, 1000, 6 * 1024);
        await page.Context.CloseAsync();
    }

    /// <summary>
    /// Readings of their own temperatures, saved while the network goes, the answer is lost, the page is left, two tabs
    /// send at once or the site is killed; in the end each stands in the diary once.
    /// </summary>
    [Fact]
    public async Task Readings_WhateverIsCut_ReachTheDiaryOnce()
    {
        var random = new Random(Seed);
        var page = await phone.Site.Visit(width: 390, height: 844);
        var context = page.Context;
        await page.GotoAsync(phone.Reading);
        var before = (await phone.Ledger(page)).ToList();
        var expected = new List<string>();
        var counts = new int[6];
        for (var run = 0; run < Runs; run++)
        {
            var (tens, units) = (random.Next(0, 8), random.Next(0, 10));
            var cut = run < 6 ? run : random.Next(0, 6);
            counts[cut]++;
            expected.Add($"{(tens * 10) + units} °C, core");
            await page.Tap("tens", (tens * 10).ToString(CultureInfo.InvariantCulture));
            await page.Tap("units", units.ToString(CultureInfo.InvariantCulture));
            await Cut(page, context, cut, random);
            await Mend(page, context);
            page = context.Pages[^1];
            await Waiting(page, 0);
            if (!page.Url.EndsWith("/reading", StringComparison.Ordinal))
            {
                await Go(page);
            }
        }

        var after = (await phone.Ledger(page)).ToList();
        foreach (var old in before)
        {
            Assert.True(after.Remove(old));
        }

        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{Runs} runs, seed {Seed}: {string.Join(", ", counts)} by the kind of cut; {after.Count} stored"
        );
        Assert.Equal(expected.Order(StringComparer.Ordinal), after.Order(StringComparer.Ordinal));
        await context.CloseAsync();
    }

    private async Task Cut(IPage page, IBrowserContext context, int cut, Random random)
    {
        switch (cut)
        {
            case 0:
                // No network at all, for a while, and the page is left and opened again.
                await context.SetOfflineAsync(true);
                await page.Save();
                await Waiting(page, 1);
                break;
            case 1:
                // The request never gets there.
                await page.RouteAsync("**/outbox/*", r => r.AbortAsync("connectionreset"));
                await page.Save();
                await Waiting(page, 1);
                break;
            case 2:
                // It is stored, and the answer is lost, up to three times.
                var times = random.Next(1, 4);
                await page.RouteAsync(
                    "**/outbox/*",
                    async r =>
                    {
                        await r.FetchAsync();
                        times--;
                        if (times == 0)
                        {
                            await page.UnrouteAsync("**/outbox/*");
                        }

                        await r.AbortAsync("connectionreset");
                    }
                );
                await page.Save();
                await Waiting(page, 1);
                break;
            case 3:
                // The site is killed before, or just after, it was asked; it comes back.
                if (random.Next(2) == 0)
                {
                    await phone.Site.Kill();
                    await page.Save();
                    await Waiting(page, 1);
                }
                else
                {
                    var asked = new TaskCompletionSource();
                    page.Request += (_, r) =>
                    {
                        if (r.Url.Contains("/outbox/", StringComparison.Ordinal))
                        {
                            asked.TrySetResult();
                        }
                    };
                    await page.Save();
                    await asked.Task.WaitAsync(TimeSpan.FromSeconds(30));
                    await phone.Site.Kill();
                }

                await phone.Site.Start();
                break;
            case 4:
                // Two tabs send at once.
                await context.SetOfflineAsync(true);
                await page.Save();
                await Waiting(page, 1);
                var other = await context.NewPageAsync();
                await context.SetOfflineAsync(false);
                await Task.WhenAll(
                    other.GotoAsync(phone.Heap),
                    page.EvaluateAsync("flush()"),
                    page.EvaluateAsync("flush()")
                );
                await page.CloseAsync();
                await other.GotoAsync(phone.Reading);
                break;
            default:
                // The tab is closed at some moment after the tap.
                var done = page.EvaluateAsync(
                    "() => new Promise(d => { document.querySelector('[data-reading]').requestSubmit(); const look = async () => (await all()).length ? d() : setTimeout(look, 1); look(); })"
                );
                await Task.WhenAny(done, page.WaitForURLAsync("**/heaps/*?kept=1*"));
                var next = await context.NewPageAsync();
                await page.CloseAsync();
                await next.GotoAsync(phone.Reading);
                break;
        }
    }

    private async Task Mend(IPage page, IBrowserContext context)
    {
        await context.SetOfflineAsync(false);
        if (!page.IsClosed)
        {
            await page.UnrouteAllAsync();
            await Go(page);
            await page.EvaluateAsync("flush()");
        }
    }

    // A page that goes on by itself at the same moment ends the first try.
    private async Task Go(IPage page)
    {
        try
        {
            await page.GotoAsync(phone.Reading);
        }
        catch (PlaywrightException problem)
            when (problem.Message.Contains("ERR_ABORTED", StringComparison.Ordinal)
                || problem.Message.Contains("interrupted", StringComparison.Ordinal)
            )
        {
            await page.GotoAsync(phone.Reading);
        }
    }

    // A phone that has opened the site once, with a signal, and keeps what it needs.
    private async Task<IPage> Phone()
    {
        var page = await phone.Site.Visit(width: 390, height: 844, worker: true);
        await page.GotoAsync(phone.Reading);
        await page.EvaluateAsync("async () => { await navigator.serviceWorker.ready; }");
        await page.WaitForFunctionAsync("() => navigator.serviceWorker.controller !== null");
        await page.ReloadAsync();
        return page;
    }

    // Looks again and again until so many wait; a page that goes on meanwhile is asked anew.
    private static async Task Waiting(IPage page, int count)
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(40));
        while (true)
        {
            try
            {
                await page.EvaluateAsync(
                        """
                        async n => {
                          while ((await all()).length !== n) {
                            if (!n) await flush();
                            await new Promise(done => setTimeout(done, 30));
                          }
                        }
                        """,
                        count
                    )
                    .WaitAsync(limit.Token);
                return;
            }
            catch (PlaywrightException problem)
                when (problem.Message.Contains("context was destroyed", StringComparison.Ordinal)
                    || problem.Message.Contains("is not defined", StringComparison.Ordinal)
                )
            {
                await page.WaitForLoadStateAsync(LoadState.Load);
            }
        }
    }

    // A picture that a browser draws, with a place and a time put into its head.
    private static async Task<byte[]> Picture(IPage page)
    {
        var drawn = Convert.FromBase64String(
            await page.EvaluateAsync<string>(
                """
                () => {
                  const canvas = document.createElement('canvas');
                  canvas.width = 2400; canvas.height = 1800;
                  const pen = canvas.getContext('2d');
                  pen.fillStyle = '#8a6d4a'; pen.fillRect(0, 0, 2400, 1800);
                  pen.fillStyle = '#2f5d38'; pen.fillRect(300, 300, 900, 900);
                  return canvas.toDataURL('image/jpeg').split(',')[1];
                }
                """
            )
        );
        byte[] place = [.. "Exif\0\0GPS 51.5N 0.1W"u8];
        return
        [
            .. drawn[..2],
            0xFF,
            0xE1,
            (byte)((place.Length + 2) >> 8),
            (byte)(place.Length + 2),
            .. place,
            .. drawn[2..],
        ];
    }
}
