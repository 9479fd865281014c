using System.Net;
using System.Net.NetworkInformation;

namespace Heapwright.Web.Hosting;

/// <summary>Where the site listens and where it keeps its data, from the environment.</summary>
/// <param name="Url">The address, such as <c>http://127.0.0.1:5080</c>.</param>
/// <param name="DataFolder">The data folder; made if it is not there.</param>
/// <param name="Hosts">The host names under which it answers; others are refused.</param>
/// <param name="Proxies">The addresses of the proxies that are believed when they say for whom they ask.</param>
public sealed record WebSettings(
    string Url,
    string DataFolder,
    IReadOnlyList<string> Hosts,
    IReadOnlyList<IPAddress> Proxies
)
{
    /// <summary>The address that is used unless told otherwise.</summary>
    public const string UsualUrl = "http://127.0.0.1:5080";

    /// <summary>Reads HEAPWRIGHT_URL, HEAPWRIGHT_DATA, HEAPWRIGHT_HOSTS and HEAPWRIGHT_PROXY.</summary>
    /// <param name="read">Reads one setting.</param>
    public static WebSettings Read(Func<string, string?> read)
    {
        ArgumentNullException.ThrowIfNull(read);
        var url = Filled(read("HEAPWRIGHT_URL")) ?? UsualUrl;
        var data =
            Filled(read("HEAPWRIGHT_DATA"))
            ?? Path.Combine(
                Environment.GetFolderPath(
                    Environment.SpecialFolder.LocalApplicationData,
                    Environment.SpecialFolderOption.DoNotVerify
                ),
                "heapwright"
            );
        return new WebSettings(
            url,
            Path.GetFullPath(data),
            Names(url, Filled(read("HEAPWRIGHT_HOSTS"))),
            [
                .. Addresses(read("HEAPWRIGHT_PROXY"))
                    .Select(a => IPAddress.TryParse(a, out var address) ? address : null)
                    .OfType<IPAddress>(),
            ]
        );
    }

    /// <summary>What stands in HEAPWRIGHT_PROXY and is no address; null where all are.</summary>
    /// <param name="proxies">The setting.</param>
    public static string? WrongProxy(string? proxies) =>
        Addresses(proxies).FirstOrDefault(a => !IPAddress.TryParse(a, out _));

    private static string[] Addresses(string? text) =>
        (text ?? "").Split([',', ';', ' '], StringSplitOptions.RemoveEmptyEntries);

    private static string? Filled(string? value) =>
        string.IsNullOrWhiteSpace(value) ? null : value.Trim();

    // A page on another name must not reach this program by pointing that name here, so only known names answer.
    private static List<string> Names(string url, string? more)
    {
        var hosts = new List<string> { "localhost", "127.0.0.1", "[::1]" };
        if (more is not null)
        {
            hosts.AddRange(
                more.Split(
                    [',', ';', ' '],
                    StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
                )
            );
        }

        foreach (var address in url.Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            if (Uri.TryCreate(address, UriKind.Absolute, out var uri) && !IsAny(uri.Host))
            {
                hosts.Add(uri.Host);
            }
            else
            {
                hosts.AddRange(OwnAddresses());
                hosts.Add(Environment.MachineName);
            }
        }

        return [.. hosts.Distinct(StringComparer.OrdinalIgnoreCase)];
    }

    private static bool IsAny(string host) => host is "0.0.0.0" or "[::]" or "*" or "+";

    private static IEnumerable<string> OwnAddresses() =>
        NetworkInterface
            .GetAllNetworkInterfaces()
            .SelectMany(n => n.GetIPProperties().UnicastAddresses)
            .Select(a => a.Address)
            .Where(a => !IPAddress.IsLoopback(a) && !a.IsIPv6LinkLocal)
            .Select(a =>
                a.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6
                    ? $"[{a}]"
                    : a.ToString()
            );
}
