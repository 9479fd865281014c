using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>Taps on the reading page.</summary>
internal static class Taps
{
    /// <summary>Taps a key.</summary>
    public static Task Tap(this IPage page, string name, string value) =>
        page.Locator($"[name={name}][value='{value}']").CheckAsync();

    /// <summary>Saves.</summary>
    public static Task Save(this IPage page) =>
        page.GetByRole(AriaRole.Button, new() { Name = "Save reading" }).ClickAsync();
}
