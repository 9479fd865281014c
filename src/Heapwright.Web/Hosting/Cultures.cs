using System.Globalization;
using Microsoft.AspNetCore.Localization;

namespace Heapwright.Web.Hosting;

/// <summary>Which number and date formats are known, and how one is chosen.</summary>
internal static class Cultures
{
    /// <summary>The cookie in which a device keeps its format.</summary>
    public const string Cookie = "format";

    /// <summary>The formats, by culture; the language of the pages is English in all of them.</summary>
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

    public static void Configure(RequestLocalizationOptions options)
    {
        options.DefaultRequestCulture = new RequestCulture("en-GB", "en");
        options.SupportedCultures =
        [
            .. Formats.Select(CultureInfo.GetCultureInfo),
            .. new[]
            {
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
            }.Select(CultureInfo.GetCultureInfo),
        ];
        options.SupportedUICultures = [CultureInfo.GetCultureInfo("en")];
        options.ApplyCurrentCultureToResponseHeaders = false;
        options.RequestCultureProviders =
        [
            new CookieRequestCultureProvider { CookieName = Cookie },
            new AcceptLanguageHeaderRequestCultureProvider(),
        ];
    }
}
