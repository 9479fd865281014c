using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>A running site with one heap, shared by the tests of the phone; they take nothing out.</summary>
public sealed class PhoneSite : IAsyncLifetime
{
    /// <summary>The site.</summary>
    public RunningSite Site { get; } = new();

    /// <summary>The address of the heap's page.</summary>
    public string Heap { get; private set; } = "";

    /// <summary>The address of the heap's reading page.</summary>
    public string Reading => Heap + "/reading";

    /// <summary>The readings of the heap as they stand, in °C, with the number of all entries.</summary>
    public async Task<IReadOnlyList<string>> Ledger(IPage page)
    {
        ArgumentNullException.ThrowIfNull(page);
        var answer = await page.APIRequest.GetAsync(Site.Url + Heap + "?all=1");
        return
        [
            .. Regex
                .Matches(
                    await answer.TextAsync(),
                    "<strong>(?<e>[^<]*)</strong>\\s*<a class=\"back\" href=\"[^\"]*/correct/",
                    RegexOptions.ExplicitCapture,
                    TimeSpan.FromSeconds(5)
                )
                .Select(m =>
                    System.Net.WebUtility.HtmlDecode(m.Groups["e"].Value).Replace('\u00a0', ' ')
                ),
        ];
    }

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        await Site.InitializeAsync();
        var page = await Site.Visit();
        await page.BringSample();
        await page.BuildHeap();
        Heap = new Uri(page.Url).AbsolutePath;
        await page.Context.CloseAsync();
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => Site.DisposeAsync();
}
