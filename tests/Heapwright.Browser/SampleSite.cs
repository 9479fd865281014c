using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>A running site with the sample garden and nothing else in it.</summary>
public sealed class SampleSite : IAsyncLifetime
{
    /// <summary>The site.</summary>
    public RunningSite Site { get; } = new();

    /// <summary>The address of the heap that was carried to the beds.</summary>
    public string Heap { get; private set; } = "";

    /// <summary>The address of its build sheet.</summary>
    public string Sheet { get; private set; } = "";

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        await Site.InitializeAsync();
        var page = await Site.Visit();
        await page.BringSample();
        await page.GotoAsync("/heaps");
        Heap = await HrefOf(page, "The summer heap");
        await page.GotoAsync("/sheets");
        Sheet = await HrefOf(page, "The summer heap");
        await page.Context.CloseAsync();
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => Site.DisposeAsync();

    private static async Task<string> HrefOf(IPage page, string name) =>
        (
            await page.Locator("main")
                .GetByRole(
                    AriaRole.Link,
                    new()
                    {
                        NameRegex = new Regex(name, RegexOptions.None, TimeSpan.FromSeconds(1)),
                    }
                )
                .First.GetAttributeAsync("href")
        )!;
}
