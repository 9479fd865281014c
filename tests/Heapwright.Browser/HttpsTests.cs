using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Reflection;
using Microsoft.Playwright;

namespace Heapwright.Browser;

/// <summary>
/// The way to https that the guide describes, from end to end: Debian's Caddy with its own authority, a browser that was
/// told to trust it and nothing else, a phone that was let in, and a reading taken without signal.
/// </summary>
[Collection(BrowserTests.Name)]
public sealed class HttpsTests : IAsyncLifetime
{
    private const string Host = "heap.localhost";

    private readonly string folder = Directory.CreateTempSubdirectory("heapwright-https-").FullName;

    private readonly RunningSite site = new();
    private readonly int port = FreePort();
    private Process? proxy;

    private static string Repository =>
        Path.GetFullPath(
            Path.Combine(
                typeof(HttpsTests)
                    .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
                    .Single(a => a.Key == "WebApp")
                    .Value!,
                "../../../../.."
            )
        );

    private string Root => $"https://{Host}:{port}";

    public async ValueTask InitializeAsync()
    {
        site.Settings["HEAPWRIGHT_HOSTS"] = Host;
        site.Settings["HEAPWRIGHT_PROXY"] = "127.0.0.1";
        await site.InitializeAsync();
        var authority = Path.Combine(folder, "caddy/pki/authorities/local");
        var start = new ProcessStartInfo(
            "caddy",
            [
                "run",
                "--adapter",
                "caddyfile",
                "--config",
                Path.Combine(Repository, "deploy/Caddyfile"),
            ]
        );
        start.Environment["HOME"] = folder;
        start.Environment["XDG_DATA_HOME"] = folder;
        start.Environment["XDG_CONFIG_HOME"] = folder;
        start.Environment["HEAPWRIGHT_NAME"] = Host;
        start.Environment["HEAPWRIGHT_HTTP_PORT"] = FreePort()
            .ToString(System.Globalization.CultureInfo.InvariantCulture);
        start.Environment["HEAPWRIGHT_HTTPS_PORT"] = port.ToString(
            System.Globalization.CultureInfo.InvariantCulture
        );
        start.Environment["HEAPWRIGHT_UPSTREAM"] = new Uri(site.Url).Authority;
        start.Environment["HEAPWRIGHT_CA"] = authority;
        start.UseShellExecute = false;
        start.RedirectStandardError = true;
        proxy = Process.Start(start)!;
        while (
            await proxy.StandardError.ReadLineAsync() is { } line
            && !line.Contains("serving initial configuration", StringComparison.Ordinal)
        ) { }

        _ = proxy.StandardError.ReadToEndAsync();
        var store = Directory.CreateDirectory(Path.Combine(folder, ".pki/nssdb")).FullName;
        await Run("certutil", "-d", "sql:" + store, "-N", "--empty-password");
        await Run(
            "certutil",
            [
                "-d",
                "sql:" + store,
                "-A",
                "-t",
                "C,,",
                "-n",
                "heap",
                "-i",
                Path.Combine(authority, "root.crt"),
            ]
        );
    }

    public async ValueTask DisposeAsync()
    {
        if (proxy is not null)
        {
            proxy.Kill();
            await proxy.WaitForExitAsync();
            proxy.Dispose();
        }

        await site.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Phone_OverTheHomeNetwork_KeepsPagesAndSendsWhatItSavedWithoutSignal()
    {
        var (reading, token) = await Prepared();
        var stranger = await site.Visit();
        var refused = await Assert.ThrowsAsync<PlaywrightException>(() => stranger.GotoAsync(Root));
        Assert.Contains("ERR_CERT_AUTHORITY_INVALID", refused.Message, StringComparison.Ordinal);
        await stranger.Context.CloseAsync();
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(
            new BrowserTypeLaunchOptions
            {
                ExecutablePath = RunningSite.BrowserPath,
                Args = ["--no-sandbox", "--no-first-run", "--disable-background-networking"],
                Env = new Dictionary<string, string>(StringComparer.Ordinal) { ["HOME"] = folder },
            }
        );
        var context = await browser.NewContextAsync(new() { BaseURL = Root });
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(30_000);

        await page.GotoAsync(reading);
        Assert.True(await page.EvaluateAsync<bool>("isSecureContext"));
        await page.EvaluateAsync("async () => { await navigator.serviceWorker.ready; }");
        await page.GotoAsync("/settings");
        await Assertions.Expect(page.Locator("[data-no-worker]")).ToBeHiddenAsync();

        // A phone that was not let in keeps what it has, and is told.
        await page.GotoAsync(reading);
        await page.Tap("tens", "50");
        await page.Tap("units", "5");
        await page.Save();
        await Assertions.Expect(page.GetByText("1 reading waits on this phone")).ToBeVisibleAsync();
        await page.GotoAsync("/pair#" + token);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await Assertions.Expect(page.GetByText("The name here is phone.")).ToBeVisibleAsync();
        await page.GotoAsync("/outbox");
        await Assertions.Expect(page.GetByText("Nothing waits.")).ToBeVisibleAsync();

        // And without signal.
        await context.SetOfflineAsync(true);
        await page.GotoAsync(reading);
        await Assertions.Expect(page.GetByText("This page is a copy from")).ToBeVisibleAsync();
        await page.Tap("tens", "60");
        await page.Tap("units", "1");
        await page.Save();
        await Assertions.Expect(page.GetByText("1 reading waits on this phone")).ToBeVisibleAsync();
        await context.SetOfflineAsync(false);
        await page.GotoAsync("/outbox");
        await Assertions.Expect(page.GetByText("Nothing waits.")).ToBeVisibleAsync();
        await page.GotoAsync(reading.Replace("/reading", "", StringComparison.Ordinal));
        await Assertions.Expect(page.Locator("#ledger")).ToContainTextAsync("55 °C, core");
        await Assertions.Expect(page.Locator("#ledger")).ToContainTextAsync("61 °C, core");
    }

    // On the machine itself: a heap, and a phone on the list of devices.
    private async Task<(string Reading, string Token)> Prepared()
    {
        var page = await site.Visit();
        await page.BringSample();
        await page.GotoAsync("/settings/devices");
        await page.FillAsync("#name", "phone");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show the code" }).ClickAsync();
        var token = (await page.Locator("code").First.InnerTextAsync()).Trim();
        var heap = await page.APIRequest.GetAsync("/heaps");
        var html = await heap.TextAsync();
        var start = html.IndexOf("href=\"/heaps/", StringComparison.Ordinal);
        Assert.True(start > 0, "the sample garden has heaps");
        await page.Context.CloseAsync();
        var rest = html[(start + 6)..];
        return (rest[..rest.IndexOf('"', StringComparison.Ordinal)] + "/reading", token);
    }

    private static async Task Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments))!;
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
