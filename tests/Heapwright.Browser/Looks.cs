using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>
/// A page in every theme and window, without loading it anew: themes change colours and windows change sizes, so what
/// depends on these is looked for in each, and everything else once.
/// </summary>
internal static class Looks
{
    private static readonly string[] OfColourAndSize =
    [
        "color-contrast",
        "target-size",
        "scrollable-region-focusable",
    ];

    /// <summary>All themes in both windows; in the first of them everything is looked for.</summary>
    public static IReadOnlyList<(string Theme, int Width, int Height)> All { get; } =
    [
        ("light", 390, 844),
        ("dark", 390, 844),
        ("sun", 390, 844),
        ("light", 1280, 800),
        ("dark", 1280, 800),
        ("sun", 1280, 800),
    ];

    /// <summary>
    /// Light and dark in the narrow window, and whether the page fits the wide one: a theme changes no sizes, and the colours
    /// of full sun are computed in tests of their own.
    /// </summary>
    public static IReadOnlyList<(string Theme, int Width, int Height)> Usual { get; } =
    [.. All.Where(l => l.Theme != "sun" && (l.Width == 390 || l.Theme == "light"))];

    /// <summary>What is wrong with a page in some looks, each as a sentence; empty where nothing is.</summary>
    /// <param name="page">The page, loaded.</param>
    /// <param name="name">What its pictures are called.</param>
    /// <param name="looks">The looks; some of <see cref="All"/>.</param>
    public static async Task<List<string>> Complaints(
        IPage page,
        string name,
        IEnumerable<(string Theme, int Width, int Height)> looks
    )
    {
        var complaints = new List<string>();
        foreach (var (theme, width, height) in looks)
        {
            await page.SetViewportSizeAsync(width, height);
            await page.EvaluateAsync(
                "theme => document.documentElement.dataset.theme = theme",
                theme
            );
            if (RunningSite.TakesScreens)
            {
                await page.ScreenshotAsync(
                    new PageScreenshotOptions
                    {
                        Path = Path.Combine(RunningSite.Screens, $"{name}-{width}-{theme}.png"),
                        FullPage = true,
                    }
                );
            }

            var over = await page.EvaluateAsync<int>(
                "document.documentElement.scrollWidth - document.documentElement.clientWidth"
            );
            if (over > 0)
            {
                complaints.Add($"{page.Url}, {theme} {width}: {over} px wider than the window");
            }

            // What only the wide window shows, and its colours, are the same on every page: looked for where all looks are.
            if (width > 390 && looks != All)
            {
                continue;
            }

            var isFirst = (theme, width, height) == All[0];
            complaints.AddRange(
                (await page.RunAxe(isFirst ? new AxeRunOptions() : Some())).Violations.Select(v =>
                    $"{page.Url}, {theme} {width}: {Describe(v)}"
                )
            );
        }

        return complaints;
    }

    private static AxeRunOptions Some() =>
        new()
        {
            RunOnly = new RunOnlyOptions { Type = "rule", Values = [.. OfColourAndSize] },
        };

    private static string Describe(AxeResultItem item) =>
        $"{item.Id} ({item.Help}): {string.Join(" | ", item.Nodes.Take(3).Select(n => n.Html))}";
}
