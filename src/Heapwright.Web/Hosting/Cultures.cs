using System.Globalization;
using Heapwright.App.Texts;
using Microsoft.AspNetCore.Localization;

namespace Heapwright.Web.Hosting;

/// <summary>Which languages and number formats are known, and where the choice of a device is kept.</summary>
internal static class Cultures
{
    /// <summary>The cookie in which a device keeps its format.</summary>
    public const string Cookie = "format";

    /// <summary>The cookie in which a device keeps its language.</summary>
    public const string LanguageCookie = "language";

    /// <summary>The number formats, by culture; each goes with any language.</summary>
    public static IReadOnlyList<string> All => Formats;

    private static readonly string[] Formats =
    [
        "en-GB",
        "en-US",
        "en-AU",
        "en-CA",
        "en-IE",
        "en-NZ",
        "en-ZA",
        "en-IN",
        "de-DE",
        "de-AT",
        "de-CH",
        "fr-FR",
        "nl-NL",
        "es-ES",
        "it-IT",
        "pt-PT",
        "pl-PL",
        "da-DK",
        "nb-NO",
        "sv-SE",
        "fi-FI",
    ];

    // A browser may ask for a language without a country.
    private static readonly string[] Plain =
    [
        "en",
        "de",
        "fr",
        "nl",
        "es",
        "it",
        "pt",
        "pl",
        "da",
        "nb",
        "sv",
        "fi",
    ];

    /// <summary>The manifest in the language that is being read.</summary>
    public static string Manifest =>
        Languages.Code == "en"
            ? "/manifest.webmanifest"
            : $"/manifest.{Languages.Code}.webmanifest";

    /// <summary>The number format that goes with a language where none was chosen.</summary>
    /// <param name="language">The language.</param>
    public static string Usual(string language) => language == "de" ? "de-DE" : "en-GB";

    /// <summary>A number format by its name, or that of its language alone; null where it is not known.</summary>
    /// <param name="name">The name as a browser gives it.</param>
    public static string? Known(string? name) =>
        name is null
            ? null
            : Find(Formats, name) ?? Find(Plain, name) ?? Find(Plain, name.Split('-')[0]);

    /// <summary>The address that chooses a language and comes back.</summary>
    /// <param name="language">The language.</param>
    /// <param name="request">The request to come back to.</param>
    public static string Url(string language, HttpRequest request) =>
        $"/language?set={language}&back={Uri.EscapeDataString(Showing.LocalUrl.Without(request))}";

    /// <summary>Tells in what language an answer is, and that another reader would get another one.</summary>
    /// <param name="response">The answer.</param>
    public static void TellLanguage(HttpResponse response)
    {
        response.Headers.ContentLanguage = Languages.Code;
        response.Headers.Append("Vary", "Accept-Language, Cookie");
    }

    public static void Configure(RequestLocalizationOptions options)
    {
        options.DefaultRequestCulture = new RequestCulture("en-GB", "en");
        options.SupportedCultures = [.. Formats.Concat(Plain).Select(CultureInfo.GetCultureInfo)];
        options.SupportedUICultures = [.. Languages.All.Select(CultureInfo.GetCultureInfo)];
        options.ApplyCurrentCultureToResponseHeaders = false;
        options.RequestCultureProviders = [new ChosenCultures()];
    }

    private static string? Find(string[] names, string name) =>
        names.FirstOrDefault(n => string.Equals(n, name, StringComparison.OrdinalIgnoreCase));
}
