using Heapwright.App.Texts;
using Microsoft.AspNetCore.Localization;

namespace Heapwright.Web.Hosting;

/// <summary>
/// What a request is read in. The language: the one chosen on this device, else the first of the browser's that there is,
/// else English. The number format: the one chosen on this device, else the first of the browser's that goes with a
/// language chosen here, else the first of the browser's that is known, else the usual one of the language.
/// </summary>
internal sealed class ChosenCultures : RequestCultureProvider
{
    /// <inheritdoc/>
    public override Task<ProviderCultureResult?> DetermineProviderCultureResult(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var request = context.Request;
        var wanted = Wanted(request);
        var chosen = request.Cookies[Cultures.LanguageCookie];
        var isChosen = chosen is not null && Languages.All.Contains(chosen, StringComparer.Ordinal);
        var language = isChosen
            ? chosen!
            : wanted
                .Select(Language)
                .FirstOrDefault(l => Languages.All.Contains(l, StringComparer.Ordinal))
                ?? "en";
        var format =
            Kept(request)
            ?? wanted.FirstOrDefault(f => !isChosen || Language(f) == language)
            ?? Cultures.Usual(language);
        return Task.FromResult<ProviderCultureResult?>(new ProviderCultureResult(format, language));
    }

    private static string? Kept(HttpRequest request)
    {
        var kept = request.Cookies[Cultures.Cookie] is { } cookie
            ? CookieRequestCultureProvider.ParseCookieValue(cookie)?.Cultures
            : null;
        return kept is [var first, ..] ? Cultures.Known(first.Value) : null;
    }

    // The formats that the browser asks for and that are known, its dearest first.
    private static List<string> Wanted(HttpRequest request) =>
        [
            .. request
                .GetTypedHeaders()
                .AcceptLanguage.Where(l => l.Quality is not 0)
                .OrderByDescending(l => l.Quality ?? 1)
                .Take(10)
                .Select(l => Cultures.Known(l.Value.Value))
                .OfType<string>(),
        ];

    private static string Language(string format) => format.Split('-')[0];
}
