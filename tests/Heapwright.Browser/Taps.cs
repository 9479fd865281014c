using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>Taps that several tests make.</summary>
internal static class Taps
{
    /// <summary>Taps a key.</summary>
    public static Task Tap(this IPage page, string name, string value) =>
        page.Locator($"[name={name}][value='{value}']").CheckAsync();

    /// <summary>Brings the sample garden into an empty site.</summary>
    public static async Task BringSample(this IPage page)
    {
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look round a sample garden" })
            .ClickAsync();
        await Assertions.Expect(page.GetByText("Sample garden.")).ToBeVisibleAsync();
    }

    /// <summary>Builds the first recipe by its sheet; the page is that of its heap then.</summary>
    public static async Task BuildHeap(this IPage page)
    {
        await page.GotoAsync("/recipe");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the build sheet" })
            .First.ClickAsync();
        await page.WaitForURLAsync("**/sheets/*");
        await page.GotoAsync(new Uri(page.Url).AbsolutePath + "/built");
        await page.GetByRole(AriaRole.Button, new() { Name = "Start its diary" }).ClickAsync();
        await page.WaitForURLAsync("**/heaps/*");
    }

    /// <summary>Saves.</summary>
    public static Task Save(this IPage page) =>
        page.GetByRole(AriaRole.Button, new() { Name = "Save reading" }).ClickAsync();
}
