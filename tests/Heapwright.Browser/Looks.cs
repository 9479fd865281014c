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

    // Words that a style takes off the page, except where that is meant: a class of the same name for another thing does so
    // without a sound, and nothing else here reads what is not shown.
    private const string HiddenWords = """
        () => [...document.querySelectorAll('main *')]
          .filter(e => getComputedStyle(e).display === 'none' && e.textContent.trim()
            && getComputedStyle(e.parentElement).display !== 'none'
            && !e.matches('[hidden], template, script, noscript, option, datalist, .print-only, .when-wide, .when-narrow, .narrow, .wide, .warn, .readback, [data-day], [data-for]'))
          .map(e => `${e.tagName} ${e.getAttribute('class')}: ${e.textContent.trim().slice(0, 40)}`)
        """;

    /// <summary>All themes in both windows; in the first of them everything is looked for.</summary>
    public static IReadOnlyList<Look> All { get; } =
    [
        new("light", 390, 844, []),
        new("dark", 390, 844, OfColourAndSize),
        new("sun", 390, 844, OfColourAndSize),
        new("light", 1280, 800, OfColourAndSize),
        new("dark", 1280, 800, OfColourAndSize),
        new("sun", 1280, 800, OfColourAndSize),
    ];

    /// <summary>
    /// Light and dark in the narrow window, and whether the page fits the wide one and a zoomed one: a theme changes no sizes, what only the
    /// wide window shows is the same on every page, and the colours of full sun are computed in tests of their own.
    /// </summary>
    public static IReadOnlyList<Look> Usual { get; } =
    [
        All[0],
        All[1],
        All[3] with
        {
            Rules = null,
        },
        // What a window of 1280 by 800 shows at 200 % and at 400 %.
        new("light", 640, 400, null),
        new("light", 320, 256, null),
    ];

    /// <summary>What is wrong with a page in some looks, each as a sentence; empty where nothing is.</summary>
    /// <param name="page">The page, loaded.</param>
    /// <param name="name">What its pictures are called.</param>
    /// <param name="looks">The looks.</param>
    public static async Task<List<string>> Complaints(
        IPage page,
        string name,
        IEnumerable<Look> looks
    )
    {
        var complaints = new List<string>();
        foreach (var look in looks)
        {
            var (theme, width, height, rules) = look;
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

            complaints.AddRange(
                (await page.EvaluateAsync<string[]>(HiddenWords)).Select(w =>
                    $"{page.Url}, {theme} {width}: nobody sees {w}"
                )
            );
            if (rules is not null)
            {
                complaints.AddRange(
                    (await page.RunAxe(Options(rules))).Violations.Select(v =>
                        $"{page.Url}, {theme} {width}: {Describe(v)}"
                    )
                );
            }
        }

        return complaints;
    }

    // Only what is wrong is brought over from the page: what is right is many times as long.
    private static AxeRunOptions Options(IReadOnlyList<string> rules) =>
        new()
        {
            ResultTypes = [ResultType.Violations],
            RunOnly =
                rules.Count == 0 ? null : new RunOnlyOptions { Type = "rule", Values = [.. rules] },
        };

    private static string Describe(AxeResultItem item) =>
        $"{item.Id} ({item.Help}): {string.Join(" | ", item.Nodes.Take(3).Select(n => n.Html))}";
}
