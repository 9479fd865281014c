namespace Heapwright.Web.Showing;

/// <summary>How bright the pages are: kept by each phone for itself.</summary>
public static class Themes
{
    /// <summary>The cookie it is kept in.</summary>
    public const string Cookie = "theme";

    /// <summary>As the device has it, light, dark, and for full sun.</summary>
    public static IReadOnlyList<string> All { get; } = ["auto", "light", "dark", "sun"];

    /// <summary>The theme of a request.</summary>
    /// <param name="request">The request.</param>
    public static string Of(HttpRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var chosen = request.Cookies[Cookie];
        return chosen is not null && All.Contains(chosen, StringComparer.Ordinal) ? chosen : "auto";
    }

    /// <summary>The address that chooses a theme and comes back.</summary>
    /// <param name="theme">The theme.</param>
    /// <param name="request">The request to come back to.</param>
    public static string Url(string theme, HttpRequest request) =>
        $"/theme?set={theme}&back={Uri.EscapeDataString(LocalUrl.Without(request))}";
}
