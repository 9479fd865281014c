using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>From an empty yard, in barrows and buckets, to the record of a batch that lies on a bed.</summary>
[Collection(BrowserTests.Name)]
public sealed class WholeJobTests
{
    private static readonly (string Words, string Pick, string Amount, string Unit)[] Stuff =
    [
        ("lawn mowings", "Grass clippings, fresh", "3", "wheelbarrow"),
        ("dead leaves", "Autumn leaves, mixed, dry and loose", "6", "wheelbarrow"),
        ("wood chips", "Wood chips, coarse, without leaves", "2", "wheelbarrow"),
        ("kitchen scraps", "Kitchen scraps, mixed vegetable and fruit", "3", "bucket"),
        ("stable muck", "Horse manure with straw", "4", "wheelbarrow"),
    ];

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task WholeJob_FromEmptyYard_EndsWithTheRecordOfABatch(bool script)
    {
        await using var site = new RunningSite();
        await site.InitializeAsync();
        var page = await site.Visit(script, 390, 844);
        await page.GotoAsync("/");

        // Start a site of one's own.
        await page.GetByLabel("Name").FillAsync("Top plot");
        await page.GetByRole(AriaRole.Button, new() { Name = "Start my own" }).ClickAsync();
        await Heading(page, "Stock");

        // A bay to build in.
        await page.GotoAsync("/settings/bays");
        await page.GetByLabel("Name").FillAsync("Left bay");
        await page.GetByLabel("Length", new() { Exact = true }).FillAsync("1,2");
        await page.GetByLabel("Width", new() { Exact = true }).FillAsync("1.2");
        await page.GetByLabel("Height to fill to").FillAsync("1.1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Assertions.Expect(page.GetByText("1.2 × 1.2 × 1.1 m high")).ToBeVisibleAsync();

        foreach (var (words, pick, amount, unit) in Stuff)
        {
            await page.GotoAsync("/stock");
            await page.GetByLabel("What have you got?").FillAsync(words);
            await page.GetByRole(AriaRole.Button, new() { Name = "Find" }).ClickAsync();
            await page.GetByRole(AriaRole.Link, new() { Name = "Take " + pick, Exact = true })
                .ClickAsync();
            await page.GetByLabel("How many").FillAsync(amount);
            await page.Locator($"input[name=unit][value={unit}]").CheckAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Add to the stock" }).ClickAsync();
            await Heading(page, "Stock");
        }

        // One barrow of grass more, and undo.
        await page.GetByRole(
                AriaRole.Button,
                new() { Name = "One wheelbarrow more of lawn mowings" }
            )
            .ClickAsync();
        await Assertions
            .Expect(page.GetByText("lawn mowings: 3 wheelbarrows became 4 wheelbarrows"))
            .ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(page.Locator("output").First).ToHaveTextAsync("3");

        // What would it make?
        await page.GotoAsync("/mix");
        await Assertions.Expect(page.Locator("svg.picture").First).ToBeVisibleAsync();
        await page.GetByRole(
                AriaRole.Button,
                new() { Name = "One wheelbarrow less of dead leaves" }
            )
            .ClickAsync();
        await Assertions
            .Expect(page.Locator(".goods li").Nth(1).Locator("output"))
            .ToHaveTextAsync("5");
        await page.GoBackAsync();
        await Assertions
            .Expect(page.Locator(".goods li").Nth(1).Locator("output"))
            .ToHaveTextAsync("6");

        // The best heap, and its sheet.
        await page.GotoAsync("/recipe");
        await Assertions
            .Expect(
                page.GetByRole(AriaRole.Heading, new() { Level = 2 })
                    .Filter(new() { HasText = "Plan 1" })
            )
            .ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the build sheet" })
            .First.ClickAsync();
        await Heading(page, "Left bay");
        var layers = page.Locator("ol.layers > li");
        Assert.True(await layers.CountAsync() >= 3);
        await Assertions.Expect(page.Locator(".drawing svg")).ToBeVisibleAsync();

        // Build the first layer.
        await page.GetByRole(AriaRole.Button, new() { Name = "Layer 1 done" }).ClickAsync();
        await Assertions
            .Expect(page.GetByRole(AriaRole.Button, new() { Name = "Layer 1 done" }))
            .ToHaveAttributeAsync("aria-pressed", "true");
        await page.ReloadAsync();
        await Assertions
            .Expect(page.GetByRole(AriaRole.Button, new() { Name = "Layer 1 done" }))
            .ToHaveAttributeAsync("aria-pressed", "true");
        var sheet = new Uri(page.Url).AbsolutePath;
        await page.GotoAsync("/");
        await Assertions
            .Expect(page.GetByText("Left bay: 1 of", new() { Exact = false }))
            .ToBeVisibleAsync();

        // It is built: its diary begins.
        await page.GotoAsync(sheet + "/built");
        await page.GetByRole(AriaRole.Button, new() { Name = "Start its diary" }).ClickAsync();
        await Heading(page, "Left bay");
        var heap = new Uri(page.Url).AbsolutePath;

        // The yard asks for nothing of a heap that was built today, the round leads to its reading.
        await page.GotoAsync("/round");
        await page.GetByRole(AriaRole.Link, new() { Name = "Take a reading" }).ClickAsync();
        await page.Tap("tens", "20");
        await page.Tap("units", "3");
        await page.Tap("squeeze", "sponge");
        await page.Save();
        await Heading(page, "Round");
        await Assertions.Expect(page.GetByText("23 °C in the core")).ToBeVisibleAsync();

        // Turned with water, and one thing was typed wrong first.
        await Do(page, heap, "water", "water", "a lot");
        await Assertions.Expect(page.Locator(".wrongs").First).ToBeVisibleAsync();
        await Deeds(page).Locator("[name=water]").FillAsync("20");
        await Deeds(page).Locator("button[type=submit]").ClickAsync();
        await Assertions.Expect(page.Locator("#ledger")).ToContainTextAsync("20 L");
        await Do(page, heap, "spread", "bed", "Brassica bed", "spread", "400");
        await Assertions.Expect(page.Locator("#ledger")).ToContainTextAsync("Brassica bed");
        await Do(page, heap, "close");
        await Assertions.Expect(page.Locator("#ledger")).ToContainTextAsync("no longer followed");

        // The record tells it from the stock to the bed.
        await page.GotoAsync(heap + "/record");
        await Heading(page, "The record of this batch");
        var record = await page.Locator("main").TextContentAsync();
        Assert.Contains("stable muck", record, StringComparison.Ordinal);
        Assert.Contains("Brassica bed", record, StringComparison.Ordinal);
        var pdf = await page.APIRequest.GetAsync(heap + "/record.pdf");
        Assert.StartsWith(
            "%PDF-",
            System.Text.Encoding.Latin1.GetString(await pdf.BodyAsync()),
            StringComparison.Ordinal
        );
        await page.GotoAsync("/");
        await Assertions
            .Expect(page.GetByRole(AriaRole.Link, new() { Name = "Free. See what would fit" }))
            .ToBeVisibleAsync();
    }

    // Something that was done, with what is typed into its fields.
    private static async Task Do(IPage page, string heap, string deed, params string[] typed)
    {
        await page.GotoAsync(heap);
        await page.Locator("summary").Filter(new() { HasText = "Turned, watered" }).ClickAsync();
        var form = Deeds(page);
        await form.Locator($"[name=do][value={deed}]").CheckAsync();
        for (var i = 0; i < typed.Length; i += 2)
        {
            await form.Locator($"[name={typed[i]}]").FillAsync(typed[i + 1]);
        }

        await form.Locator("button[type=submit]").ClickAsync();
    }

    private static ILocator Deeds(IPage page) =>
        page.Locator("form").Filter(new() { Has = page.Locator("[name=do]") });

    private static Task Heading(IPage page, string text) =>
        Assertions
            .Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 }))
            .ToHaveTextAsync(
                new Regex(Regex.Escape(text), RegexOptions.None, TimeSpan.FromSeconds(1))
            );
}
