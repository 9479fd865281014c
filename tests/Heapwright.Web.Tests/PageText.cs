using System.Net;
using System.Text.RegularExpressions;

namespace Heapwright.Web.Tests;

/// <summary>Reads pages as a browser without script would.</summary>
internal static class PageText
{
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(5);

    /// <summary>Starts an own site, unless there is one.</summary>
    public static async Task OwnSite(this HttpClient caller)
    {
        if ((await caller.GetStringAsync("/")).Contains("value=\"own\"", StringComparison.Ordinal))
        {
            await caller.Send(
                "/",
                "own",
                ("name", "Top plot"),
                ("zone", "Europe/London"),
                ("units", "metric")
            );
        }
    }

    /// <summary>Makes a bay of a cubic metre, or tries to.</summary>
    public static Task<HttpResponseMessage> NewBay(this HttpClient caller, string name) =>
        caller.Send(
            "/settings/bays",
            "bay",
            ("name", name),
            ("shape", "box"),
            ("length_m", "1"),
            ("width_m", "1"),
            ("height_m", "1")
        );

    /// <summary>Fills in a form and sends it.</summary>
    public static async Task<HttpResponseMessage> Send(
        this HttpClient caller,
        string page,
        string handler,
        params (string Name, string Value)[] fields
    )
    {
        var html = await caller.GetStringAsync(page);
        var form =
            Regex
                .Matches(html, "<form.*?</form>", RegexOptions.Singleline, Limit)
                .Select(m => m.Value)
                .FirstOrDefault(f => f.Contains($"value=\"{handler}\"", StringComparison.Ordinal))
            ?? throw new InvalidOperationException($"no form {handler} on {page}: {html}");
        var all = Regex
            .Matches(
                form,
                "<input type=\"hidden\" name=\"(?<n>[^\"]*)\" value=\"(?<v>[^\"]*)\"",
                RegexOptions.ExplicitCapture,
                Limit
            )
            .Select(m =>
                KeyValuePair.Create(m.Groups["n"].Value, WebUtility.HtmlDecode(m.Groups["v"].Value))
            )
            .Where(f => fields.All(x => x.Name != f.Key))
            .Concat(fields.Select(f => KeyValuePair.Create(f.Name, f.Value)));
        var action = Regex.Match(
            form,
            "^<form[^>]* action=\"(?<a>[^\"]*)\"",
            RegexOptions.ExplicitCapture,
            Limit
        );
        return await caller.PostAsync(
            action.Success ? WebUtility.HtmlDecode(action.Groups["a"].Value) : page,
            new FormUrlEncodedContent(all)
        );
    }
}
