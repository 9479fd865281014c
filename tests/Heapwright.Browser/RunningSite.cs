using System.Diagnostics;
using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>The site as people run it: a process of its own on a free port, with an empty data folder, and a browser.</summary>
public sealed partial class RunningSite : IAsyncLifetime
{
    private static readonly string[] Flags =
    [
        "--no-sandbox",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
    ];

    private readonly string folder = Directory
        .CreateTempSubdirectory("heapwright-browser-")
        .FullName;

    private Process? process;
    private IPlaywright? playwright;
    private IBrowser? browser;

    /// <summary>Further settings of the site, from its environment.</summary>
    public IDictionary<string, string> Settings { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Where the site answers.</summary>
    public string Url { get; private set; } = "";

    /// <summary>The browser that is used: Debian's, unless HEAPWRIGHT_BROWSER names another.</summary>
    public static string BrowserPath =>
        Environment.GetEnvironmentVariable("HEAPWRIGHT_BROWSER") ?? "/usr/bin/chromium";

    /// <summary>Whether pictures of pages are wanted: HEAPWRIGHT_SCREENS names a folder for them.</summary>
    public static bool TakesScreens =>
        Environment.GetEnvironmentVariable("HEAPWRIGHT_SCREENS") is { Length: > 0 };

    /// <summary>Where the site was published, as <c>./test</c> does; null where only its build is used.</summary>
    public static string? Published => Environment.GetEnvironmentVariable("HEAPWRIGHT_WEB");

    /// <summary>Where pictures of pages are put to be looked at.</summary>
    public static string Screens =>
        Directory
            .CreateDirectory(
                Environment.GetEnvironmentVariable("HEAPWRIGHT_SCREENS")
                    ?? Path.Combine(AppContext.BaseDirectory, "screens")
            )
            .FullName;

    /// <summary>A fresh visitor.</summary>
    /// <param name="script">Whether the browser runs script.</param>
    /// <param name="width">The width of the window.</param>
    /// <param name="height">The height of the window.</param>
    /// <param name="theme">auto, light, dark or sun.</param>
    /// <param name="worker">Whether the browser may keep pages for use without signal.</param>
    public async Task<IPage> Visit(
        bool script = true,
        int width = 1280,
        int height = 800,
        string theme = "light",
        bool worker = false
    )
    {
        var context = await browser!.NewContextAsync(
            new BrowserNewContextOptions
            {
                BaseURL = Url,
                JavaScriptEnabled = script,
                Locale = "en-GB",
                ServiceWorkers = worker ? ServiceWorkerPolicy.Allow : ServiceWorkerPolicy.Block,
                ViewportSize = new ViewportSize { Width = width, Height = height },
            }
        );
        await context.AddCookiesAsync([
            new Cookie
            {
                Name = "theme",
                Value = theme,
                Url = Url,
            },
        ]);
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(30_000);
        return page;
    }

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        await Start();
        // A busy machine may be slow; what is waited for still has to come.
        Assertions.SetDefaultExpectTimeout(30_000);
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(
            new BrowserTypeLaunchOptions { ExecutablePath = BrowserPath, Args = Flags }
        );
    }

    /// <summary>Starts the site, where it was if it ran before.</summary>
    public async Task Start()
    {
        var app =
            Published
            ?? typeof(RunningSite)
                .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
                .Single(a => a.Key == "WebApp")
                .Value!;
        var start = new ProcessStartInfo("dotnet", "Heapwright.Web.dll")
        {
            WorkingDirectory = Path.GetFullPath(app),
            RedirectStandardOutput = true,
            UseShellExecute = false,
            RedirectStandardError = true,
        };
        start.Environment["HEAPWRIGHT_URL"] = Url.Length > 0 ? Url : "http://127.0.0.1:0";
        start.Environment["HEAPWRIGHT_DATA"] = folder;
        start.Environment["TZ"] = "Europe/London";
        start.Environment["ASPNETCORE_ENVIRONMENT"] = "Production";
        foreach (var (name, value) in Settings)
        {
            start.Environment[name] = value;
        }

        process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var found = false;
        while (!found && await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (Listening().Match(line) is { Success: true } match)
            {
                Url = match.Groups["url"].Value;
                found = true;
            }
        }

        if (!found)
        {
            throw new InvalidOperationException("the site did not start: " + await errors);
        }

        // What it says further is read on, so that it is never held up by a full pipe.
        _ = process.StandardOutput.ReadToEndAsync();
    }

    /// <summary>Kills the site as a power cut would.</summary>
    public async Task Kill()
    {
        if (process is not null)
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync();
            process.Dispose();
            process = null;
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
        await Kill();

        Directory.Delete(folder, recursive: true);
    }

    [GeneratedRegex(
        @"Now listening on: (?<url>http://127\.0\.0\.1:\d+)",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Listening();
}
