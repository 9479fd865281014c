using System.Globalization;
using System.Net;
using System.Text;
using Heapwright.App.Texts;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Tests;

/// <summary>Who is answered in which language, with which numbers.</summary>
public sealed class LanguageTests : IAsyncLifetime
{
    private static readonly CancellationToken Never = CancellationToken.None;
    private readonly SiteUnderTest site = new();
    private HttpClient caller = null!;

    public ValueTask InitializeAsync()
    {
        caller = site.Caller();
        return ValueTask.CompletedTask;
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    [Theory]
    [InlineData(null, null, "en")]
    [InlineData("de-AT,de;q=0.9,en;q=0.5", null, "de")]
    [InlineData("en;q=0.5,de", null, "de")]
    [InlineData("fr-FR,de;q=0.5", null, "de")]
    [InlineData("fr-FR", null, "en")]
    [InlineData("de;q=0", null, "en")]
    [InlineData("nonsense;;=,*", null, "en")]
    [InlineData("en-GB", "de", "de")]
    [InlineData("de", "en", "en")]
    [InlineData("de", "tlh", "de")]
    public async Task Page_OfABrowser_IsInTheLanguageChosenOrAskedFor(
        string? asked,
        string? chosen,
        string language
    )
    {
        var answer = await Get("/", asked, chosen);
        var html = await answer.Content.ReadAsStringAsync(Never);

        Assert.Contains($"<html lang=\"{language}\"", html, StringComparison.Ordinal);
        Assert.Equal([language], answer.Content.Headers.ContentLanguage);
        Assert.Contains(
            "Accept-Language",
            string.Join(',', answer.Headers.Vary),
            StringComparison.Ordinal
        );
        Assert.Contains(
            language == "de"
                ? "Ein guter Haufen aus dem, was da ist"
                : "A good heap from what you have",
            html,
            StringComparison.Ordinal
        );
        Assert.Contains(
            language == "de" ? "/manifest.de.webmanifest" : "/manifest.webmanifest",
            html,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Switch_OnTheFirstPage_IsKeptAndComesBack()
    {
        var answer = await caller.GetAsync("/language?set=de&back=%2Fsettings", Never);

        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.Equal("/settings", answer.Headers.Location?.ToString());
        var html = await caller.GetStringAsync("/settings", Never);
        Assert.Contains("<html lang=\"de\"", html, StringComparison.Ordinal);
        Assert.Contains("hreflang=\"en\"", html, StringComparison.Ordinal);
        Assert.Contains("1.234,5", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("?set=de&back=https%3A%2F%2Fexample.org")]
    [InlineData("?set=xx&back=%2F%2Fexample.org")]
    [InlineData("")]
    public async Task Switch_LeadingElsewhere_StaysHere(string query)
    {
        var answer = await caller.GetAsync("/language" + query, Never);

        Assert.Equal("/", answer.Headers.Location?.ToString());
        Assert.Equal(
            query.Contains("set=de", StringComparison.Ordinal),
            answer.Headers.Contains("Set-Cookie")
        );
    }

    [Theory]
    [InlineData("de", null, null, "1.234,5")]
    [InlineData("en-GB", "de", null, "1.234,5")]
    [InlineData("de-CH,en", "de", null, "1’234.5")]
    [InlineData("de", "en", null, "1,234.5")]
    [InlineData("en-GB", "de", "en-US", "1,234.5")]
    [InlineData("en-GB", null, "de-DE", "1.234,5")]
    [InlineData("fr", null, null, "1 234,5")]
    public async Task Numbers_FollowTheFormatChosenAndElseTheLanguage(
        string asked,
        string? chosen,
        string? format,
        string written
    )
    {
        var answer = await Get("/settings", asked, chosen, format);
        var html = WebUtility
            .HtmlDecode(await answer.Content.ReadAsStringAsync(Never))
            .Replace('\u202f', ' ');

        Assert.Contains(" " + written + ".", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Amount_TypedWithAComma_IsKeptAndShownWithAComma()
    {
        await caller.OwnSite();
        await caller.GetAsync("/language?set=de", Never);
        var kept = await caller.Send(
            "/stock/add?material=wheat_straw",
            "add",
            ("name", "Stroh"),
            ("amount", "2,3"),
            ("unit", "kg"),
            ("since", "2026-08-03")
        );

        Assert.Equal(HttpStatusCode.Found, kept.StatusCode);
        Assert.Contains(
            "2,3",
            await caller.GetStringAsync("/stock", Never),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Api_WithoutALanguage_AnswersInEnglish()
    {
        using var question = new StringContent(
            """{"ingredients":[{"material":"wheat_straw","amount":{"value":1,"unit":"bale"}}]}""",
            Encoding.UTF8,
            "application/json"
        );
        var answer = await caller.PostAsync("/api/mix", question, Never);
        var text = await answer.Content.ReadAsStringAsync(Never);

        Assert.Contains("Too dry: it will stall.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Sentences_OfAnotherLanguage_FallBackToEnglish()
    {
        var was = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("fr");

            Assert.Equal("en", Languages.Code);
            Assert.Equal("Save", Say.Of("common.save"));
        }
        finally
        {
            CultureInfo.CurrentUICulture = was;
        }
    }

    [Theory]
    [InlineData("en", 0, "_many")]
    [InlineData("en", 1, "_one")]
    [InlineData("de", 2, "_many")]
    [InlineData("de", 0, "_many")]
    public void Plural_OfACount_IsTheSameRuleInBoth(string language, int count, string end) =>
        In(language, () => Assert.Equal(end, Languages.End(count)));

    [Theory]
    [InlineData("en", 0.5, "½ wheelbarrow")]
    [InlineData("en", 1.5, "1½ wheelbarrows")]
    [InlineData("de", 0.5, "½ Schubkarre")]
    [InlineData("de", 1, "1 Schubkarre")]
    [InlineData("de", 1.5, "1½ Schubkarren")]
    [InlineData("de", 0, "0 Schubkarren")]
    public void Unit_OfAnAmount_IsNamedInTheLanguage(string language, double amount, string said) =>
        In(
            language,
            () =>
                Assert.Equal(
                    said,
                    new Shown(App.Sites.DisplayUnits.Metric, Languages.Now).Amount(
                        amount,
                        "wheelbarrow"
                    )
                )
        );

    [Theory]
    [InlineData("en", "2½ wheelbarrows of Gras came in.")]
    [InlineData("de", "Gras kam herein: 2½ Schubkarren.")]
    public void Act_KeptWithIds_IsSaidInTheLanguage(string language, string said) =>
        In(
            language,
            () =>
                Assert.Contains(
                    said,
                    App.Changes.ActWords.Of(
                        new App.Changes.Act
                        {
                            Number = 1,
                            At = NodaTime.Instant.FromUtc(2026, 8, 3, 14, 5),
                            What = "acts.stock_added",
                            Values = ["2.5", "wheelbarrow", "Gras"],
                            Changes = [],
                        }
                    ),
                    StringComparison.Ordinal
                )
        );

    [Fact]
    public async Task Sample_BroughtInInGerman_IsGerman()
    {
        await caller.GetAsync("/language?set=de", Never);
        await caller.Send("/", "sample");
        var yard = await caller.GetStringAsync("/", Never);

        Assert.Contains("Mauergarten Steinbruch", yard, StringComparison.Ordinal);
        Assert.Contains("Rasenschnitt", yard, StringComparison.Ordinal);
        Assert.DoesNotContain("Grass clippings", yard, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en", "3 Aug 2026", "3 Aug, 14:05")]
    [InlineData("de", "3. August 2026", "3. Aug., 14:05")]
    public void Day_IsWrittenAsTheLanguageHasIt(string language, string day, string moment) =>
        In(
            language,
            () =>
            {
                var show = new Shown(
                    App.Sites.DisplayUnits.Metric,
                    CultureInfo.GetCultureInfo("fr")
                );
                Assert.Equal(day, show.Day(new NodaTime.LocalDate(2026, 8, 3)));
                Assert.Equal(
                    moment,
                    show.Moment(
                        NodaTime.Instant.FromUtc(2026, 8, 3, 14, 5),
                        NodaTime.DateTimeZone.Utc
                    )
                );
            }
        );

    private static void In(string language, Action work)
    {
        using (Languages.Use(language))
        {
            work();
        }
    }

    private async Task<HttpResponseMessage> Get(
        string url,
        string? asked,
        string? chosen,
        string? format = null
    )
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, url);
        if (asked is not null)
        {
            request.Headers.TryAddWithoutValidation("Accept-Language", asked);
        }

        var cookies = new List<string>();
        if (chosen is not null)
        {
            cookies.Add("language=" + chosen);
        }

        if (format is not null)
        {
            cookies.Add($"format=c%3D{format}%7Cuic%3Den");
        }

        if (cookies.Count > 0)
        {
            request.Headers.Add("Cookie", string.Join("; ", cookies));
        }

        return await caller.SendAsync(request, Never);
    }
}
