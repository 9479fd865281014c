using System.Net;
using System.Security.Cryptography;
using System.Text;

namespace Heapwright.Web.Tests;

public sealed class SecurityTests(SiteUnderTest site) : IClassFixture<SiteUnderTest>
{
    private static readonly CancellationToken Never = CancellationToken.None;

    [Theory]
    [InlineData("/")]
    [InlineData("/mix")]
    [InlineData("/health")]
    [InlineData("/openapi/v1.json")]
    [InlineData("/no-such-page")]
    public async Task Answer_Any_TellsTheBrowserToRunNothingFromWithin(string url)
    {
        var answer = await site.Caller().GetAsync(url, Never);

        var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("default-src 'self'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal("same-origin", answer.Headers.GetValues("Referrer-Policy").Single());
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/mix")]
    [InlineData("/settings")]
    [InlineData("/materials/wheat_straw")]
    [InlineData("/no-such-page")]
    public async Task Page_Any_HoldsNoStyleAndNoScriptOfItsOwn(string url)
    {
        var answer = await site.Caller().GetAsync(url, Never);
        var html = await answer.Content.ReadAsStringAsync(Never);

        Assert.DoesNotContain(" style=", html, StringComparison.OrdinalIgnoreCase);
        // One style at the first visit, letter by letter the one that the rules of the page name.
        var style = html[
            (html.IndexOf("<style>", StringComparison.Ordinal) + 7)..html.IndexOf(
                "</style>",
                StringComparison.Ordinal
            )
        ];
        Assert.Equal(1, Count(html, "<style"));
        Assert.Contains(
            $"style-src 'self' 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(style)))}';",
            answer.Headers.GetValues("Content-Security-Policy").Single(),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(" onclick=", html, StringComparison.OrdinalIgnoreCase);
        // One file of script, and none within the page.
        Assert.Equal(1, Count(html, "<script src="));
        Assert.Equal(1, Count(html, "<script"));
    }

    [Fact]
    public async Task Style_FromTheSecondPageOn_IsTheFile()
    {
        var first = await site.Caller().GetAsync("/more", Never);
        var cookie = first
            .Headers.GetValues("Set-Cookie")
            .Single(c => c.StartsWith("style=", StringComparison.Ordinal));
        using var request = new HttpRequestMessage(HttpMethod.Get, "/more");
        request.Headers.Add("Cookie", cookie.Split(';')[0]);
        var html = await (await site.Caller().SendAsync(request, Never)).Content.ReadAsStringAsync(
            Never
        );

        Assert.Contains("HttpOnly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<style", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("<link rel=\"stylesheet\" href=\"heap.", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    [InlineData("Origin", "http://evil.test")]
    [InlineData("Origin", "http://localhost:9999")]
    [InlineData("Origin", "null")]
    public async Task Post_FromAPageOfAnotherSite_IsRefusedInASentence(string header, string value)
    {
        foreach (var url in new[] { "/", "/undo", "/api/mix" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, url);
            request.Headers.Add(header, value);
            request.Content = new StringContent("{}", Encoding.UTF8, "application/json");

            var answer = await site.Caller().SendAsync(request, Never);

            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
            Assert.Contains(
                "another site",
                await answer.Content.ReadAsStringAsync(Never),
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public async Task Post_FromThisSite_IsNotRefusedForItsOrigin()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/materials/search");
        request.Headers.Add("Origin", "http://localhost");
        request.Headers.Add("Sec-Fetch-Site", "same-origin");
        request.Content = new StringContent("""{"text":"straw"}""", Encoding.UTF8);

        Assert.Equal(HttpStatusCode.OK, (await site.Caller().SendAsync(request, Never)).StatusCode);
    }

    [Fact]
    public async Task Post_FromAnotherMachine_IsRefusedInASentence()
    {
        await using var elsewhere = new SiteUnderTest { From = IPAddress.Parse("192.168.1.20") };
        var caller = elsewhere.Caller();

        var page = await caller.GetAsync("/", Never);
        var write = await caller.Send("/", "sample");

        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, write.StatusCode);
        Assert.Contains(
            "From another machine only those may change anything who signed in",
            await write.Content.ReadAsStringAsync(Never),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("X-Forwarded-For")]
    [InlineData("Forwarded")]
    [InlineData("X-Real-IP")]
    public async Task Post_ThroughAProxyOnThisMachine_IsRefused(string header)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/undo");
        request.Headers.Add(header, "203.0.113.9");

        Assert.Equal(
            HttpStatusCode.Forbidden,
            (await site.Caller().SendAsync(request, Never)).StatusCode
        );
    }

    [Fact]
    public async Task Post_WithoutItsToken_IsRefused()
    {
        var answer = await site.Caller()
            .PostAsync(
                "/",
                new FormUrlEncodedContent([KeyValuePair.Create("_handler", "sample")]),
                Never
            );

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task Request_UnderAnUnknownName_IsRefused()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.Host = "rebound.test";

        Assert.Equal(
            HttpStatusCode.BadRequest,
            (await site.Caller().SendAsync(request, Never)).StatusCode
        );
    }

    [Fact]
    public async Task Question_LargerThanTheCap_IsRefusedInASentence()
    {
        var body = new string(' ', (1 << 20) + 1);

        var answer = await site.Caller()
            .PostAsync("/api/mix", new StringContent(body, Encoding.UTF8), Never);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains(
            "larger than",
            await answer.Content.ReadAsStringAsync(Never),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("https://evil.test/")]
    [InlineData("//evil.test/")]
    [InlineData("/\\evil.test")]
    [InlineData("javascript:alert(1)")]
    public async Task Theme_WithAWayBackOutside_LeadsToTheFrontPage(string back)
    {
        var answer = await site.Caller()
            .GetAsync("/theme?set=sun&back=" + Uri.EscapeDataString(back), Never);

        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.Equal("/", answer.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task Words_WithMarkup_AreShownAsWords()
    {
        var html = await site.Caller()
            .GetStringAsync(
                "/stock/find?q=" + Uri.EscapeDataString("<script>alert(1)</script>"),
                Never
            );

        Assert.DoesNotContain("<script>alert", html, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
    }

    private static int Count(string text, string part) =>
        text.Split(part, StringSplitOptions.None).Length - 1;
}
