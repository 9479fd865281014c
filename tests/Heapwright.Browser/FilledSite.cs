using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>A running site with the sample garden and a build sheet in it, shared by the tests that only look.</summary>
public sealed class FilledSite : IAsyncLifetime
{
    private readonly SampleSite sample = new();

    /// <summary>The site.</summary>
    public RunningSite Site => sample.Site;

    /// <summary>The address of the sheet.</summary>
    public string Sheet { get; private set; } = "";

    /// <summary>The address of the first thing at hand.</summary>
    public string Entry { get; private set; } = "";

    /// <summary>The address of a heap that was built by the sheet.</summary>
    public string Heap { get; private set; } = "";

    /// <summary>The address of a backup that is looked into.</summary>
    public string Backup { get; private set; } = "";

    /// <summary>The address of a heap that is shared.</summary>
    public string Shared { get; private set; } = "";

    /// <summary>Every page, by its address.</summary>
    public IReadOnlyList<string> Pages =>
        [
            "/",
            "/round",
            "/guide",
            "/guide/water",
            "/guide/forecasts",
            "/stock",
            "/stock/find?q=muck",
            "/stock/add?material=horse_manure_straw",
            Entry,
            "/mix",
            "/mix/add?q=straw",
            "/recipe",
            "/watch?day=4",
            "/heat-proof",
            "/signs",
            "/signs?ask=squeeze_core",
            "/signs?ask=see_white&a=worry:white_growth",
            "/signs?a=worry:not_heating&a=signs.smell:rotten&a=signs.squeeze.core:drips",
            "/signs?a=worry:fire&a=signs.smell:smoke",
            Heap,
            Heap + "/taught",
            "/compare",
            sample.Heap,
            sample.Heap + "/finish?area=6&crop=cabbage",
            sample.Heap + "/record",
            "/where?name=nether",
            Heap + "/signs",
            Heap + "/signs?a=worry:cooled&a=signs.squeeze.core:dry",
            "/finish",
            "/finish?go=1&age=130&smell=earthy&see=crumbly&room=20&top=27&now=400&area=6&crop=cabbage",
            "/sheets",
            Sheet,
            "/materials",
            "/materials/wheat_straw",
            "/materials/wheat_straw/measure",
            "/materials/describe",
            "/settings",
            "/settings/bays",
            "/settings/containers",
            "/settings/backup",
            Backup,
            "/settings/links",
            Shared,
            "/settings/mail",
            "/settings/air",
            "/settings/carry",
            "/settings/changes",
            "/more",
            "/not-found",
        ];

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        await sample.InitializeAsync();
        var page = await Site.Visit();
        await page.GotoAsync("/recipe");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the build sheet" })
            .First.ClickAsync();
        await Assertions
            .Expect(page)
            .ToHaveURLAsync(new Regex("/sheets/", RegexOptions.None, TimeSpan.FromSeconds(1)));
        await page.GetByRole(AriaRole.Button, new() { Name = "Layer 1 done" }).ClickAsync();
        await Assertions.Expect(page.Locator("li.done")).ToHaveCountAsync(1);
        Sheet = new Uri(page.Url).AbsolutePath;
        await page.GotoAsync(Sheet + "/built");
        // What is at hand is looked at by other tests, so it stays.
        await page.GetByLabel("Take what went in from the stock").UncheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Start its diary" }).ClickAsync();
        await Assertions
            .Expect(page)
            .ToHaveURLAsync(new Regex("/heaps/", RegexOptions.None, TimeSpan.FromSeconds(1)));
        Heap = new Uri(page.Url).AbsolutePath;
        await page.GotoAsync("/stock");
        Entry = (await page.Locator(".goods .what a").First.GetAttributeAsync("href"))!;
        await page.GotoAsync("/settings/backup");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make one now" }).ClickAsync();
        var look = page.GetByRole(AriaRole.Link, new() { Name = "Look and restore" }).First;
        Backup = (await look.GetAttributeAsync("href"))!.Split('#')[0];
        await page.GotoAsync("/settings/links");
        await page.GetByLabel("What").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await page.GetByRole(AriaRole.Button, new() { Name = "Make a link" }).ClickAsync();
        Shared = new Uri(await page.Locator("code").InnerTextAsync()).AbsolutePath;
        await page.Context.CloseAsync();
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => sample.DisposeAsync();
}
