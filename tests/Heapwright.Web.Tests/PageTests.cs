using System.Net;

namespace Heapwright.Web.Tests;

/// <summary>Pages as a browser without script sees them.</summary>
public sealed class PageTests : IAsyncLifetime
{
    private static readonly CancellationToken Never = CancellationToken.None;
    private readonly SiteUnderTest site = new();
    private HttpClient caller = null!;

    public async ValueTask InitializeAsync()
    {
        caller = site.Caller();
        var started = await caller.Send(
            "/",
            "own",
            ("name", "Top plot"),
            ("zone", "Europe/London"),
            ("units", "american")
        );
        Assert.Equal(HttpStatusCode.Found, started.StatusCode);
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    [Fact]
    public async Task Stock_AmountThatCannotBeRead_IsToldBesideItsFieldAndNothingIsLost()
    {
        var page = await caller.Send(
            "/stock/add?material=wheat_straw",
            "add",
            ("name", "Straw from Ann"),
            ("amount", "a few"),
            ("unit", "bale"),
            ("since", "2026-01-05"),
            ("giver", "Ann")
        );
        var html = await page.Content.ReadAsStringAsync(Never);

        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.Contains("is not a number that can be read", html, StringComparison.Ordinal);
        Assert.Contains("aria-invalid=\"true\"", html, StringComparison.Ordinal);
        Assert.Contains("value=\"Straw from Ann\"", html, StringComparison.Ordinal);
        Assert.Contains("value=\"a few\"", html, StringComparison.Ordinal);
        Assert.Contains("value=\"Ann\"", html, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "Straw from Ann",
            await caller.GetStringAsync("/stock", Never),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Stock_DayToCome_IsRefused()
    {
        var page = await caller.Send(
            "/stock/add?material=wheat_straw",
            "add",
            ("name", "Straw"),
            ("amount", "1"),
            ("unit", "bale"),
            ("since", "2999-01-01")
        );

        Assert.Contains(
            "still to come",
            await page.Content.ReadAsStringAsync(Never),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Bay_TypedInFeet_IsKeptInMetres()
    {
        await caller.Send(
            "/settings/bays",
            "bay",
            ("name", "Pallet bay"),
            ("shape", "box"),
            ("length_m", "4"),
            ("width_m", "3.5"),
            ("height_m", "3")
        );

        var file = await caller.GetStringAsync("/export", Never);
        // 4 ft are 1.2192 m, by definition of the foot.
        Assert.Contains("\"length_m\": 1.2192", file, StringComparison.Ordinal);
        Assert.Contains(
            "4 × 3.5 × 3 ft high",
            WebUtility.HtmlDecode(await caller.GetStringAsync("/settings/bays", Never)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Container_WithItsOwnSize_IsUsedInTheMix()
    {
        await caller.Send(
            "/settings/containers",
            "container",
            ("name", "Bucket"),
            ("holds_l", "5")
        );
        await Add("kitchen_scraps", "Scraps", "2", "bucket");

        var html = WebUtility.HtmlDecode(await caller.GetStringAsync("/mix", Never));

        Assert.Contains("One bucket holds 5 gal", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Container_InUseWithoutAUsualSize_IsNotTakenOut()
    {
        await caller.Send(
            "/settings/containers",
            "container",
            ("name", "old bath"),
            ("holds_l", "40")
        );
        await Add("kitchen_scraps", "Scraps", "1", "old bath");
        var html = await caller.GetStringAsync("/settings/containers", Never);
        var id = System
            .Text.RegularExpressions.Regex.Match(
                html,
                "name=\"id\" value=\"(?<id>[0-9a-f]{32})\"",
                System.Text.RegularExpressions.RegexOptions.ExplicitCapture,
                TimeSpan.FromSeconds(5)
            )
            .Groups["id"]
            .Value;

        var refused = await caller.Send("/settings/containers", "remove", ("id", id));

        Assert.Contains(
            "is the measure of Scraps at hand",
            WebUtility.HtmlDecode(await refused.Content.ReadAsStringAsync(Never)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Mix_ButtonPressedTwiceOrReloaded_CountsOnce()
    {
        await Add("wheat_straw", "Straw", "3", "bale");

        var first = await caller.GetStringAsync(
            "/mix?go=1&m=wheat_straw&w=Straw&n=3&u=bale&d=0&set=0%204",
            Never
        );
        var again = await caller.GetStringAsync(
            "/mix?go=1&m=wheat_straw&w=Straw&n=3&u=bale&d=0&set=0%204",
            Never
        );

        Assert.Contains("<output>4</output>", first, StringComparison.Ordinal);
        Assert.Contains("<output>4</output>", again, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("n=3&water=warm", "\"warm\" is not a number", "value=\"warm\"")]
    [InlineData("n=3&water=-5", "-5 is out of range", "value=\"-5\"")]
    [InlineData("n=-3", "-3 is out of range", "name=\"n\" value=\"-3\"")]
    [InlineData("n=9999999", "9999999 is out of range", "value=\"9999999\"")]
    [InlineData("n=few", "\"few\" is not a number", "value=\"few\"")]
    public async Task Mix_WithAFieldThatIsNoNumber_SaysSoBesideItAndKeepsIt(
        string query,
        string why,
        string kept
    )
    {
        var html = WebUtility.HtmlDecode(
            await caller.GetStringAsync(
                "/mix?go=1&m=wheat_straw&w=Straw&u=bale&d=0&" + query,
                Never
            )
        );

        Assert.Contains("class=\"wrong\"", html, StringComparison.Ordinal);
        Assert.Contains(why, html, StringComparison.Ordinal);
        Assert.Contains(kept, html, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"verdict", html, StringComparison.Ordinal);
        // A button of the counter puts a number in its place, and nothing stays refused on the next page.
        var next = await caller.GetStringAsync(
            "/mix?go=1&m=wheat_straw&w=Straw&u=bale&d=0&set=0%204&water_set=10&" + query,
            Never
        );
        Assert.DoesNotContain("class=\"wrong\"", next, StringComparison.Ordinal);
        Assert.Contains("<output>4</output>", next, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/mix?go=1&m=no_such&n=1&u=bale")]
    [InlineData("/mix?go=1&m=wheat_straw&n=-5&u=bale&set=99%201")]
    [InlineData("/mix?go=1&m=wheat_straw&n=1e400&u=nonsense&water=abc")]
    [InlineData("/mix?add=no_such")]
    [InlineData("/recipe?bay=zzz&aim=none&chance=7&buy_w=unobtainium&buy_p=x")]
    [InlineData("/watch?sheet=zzz&bay=zzz&cover=x&walls=x&days=7&day=-4&air=hot&turns=a")]
    [InlineData("/watch?m=no_such&n=1&u=bale&day=99999999999")]
    [InlineData("/stock/not-a-guid")]
    [InlineData("/sheets/not-a-guid")]
    [InlineData("/materials/no_such")]
    [InlineData("/?done=999999")]
    [InlineData("/stock?done=abc&refused=nonsense")]
    public async Task Address_WithNonsenseInIt_StillGivesAPage(string url)
    {
        await Add("wheat_straw", "Straw", "3", "bale");

        var answer = await caller.GetAsync(url, Never);

        Assert.True(
            answer.StatusCode is HttpStatusCode.OK or HttpStatusCode.Found,
            $"{url}: {answer.StatusCode}"
        );
    }

    [Fact]
    public async Task Stuff_NobodyCanName_GetsWideRangesAndCanBeMixed()
    {
        var described = await caller.Send(
            "/materials/describe",
            "describe",
            ("name", "Pond weed"),
            ("kind", "leafy"),
            ("freshness", "fresh"),
            ("colour", "green"),
            ("feel", "slimy")
        );
        var next = described.Headers.Location!.PathAndQuery;
        await caller.Send(
            next,
            "add",
            ("name", "Pond weed"),
            ("amount", "2"),
            ("unit", "bucket"),
            ("since", "2026-01-05")
        );

        var html = await caller.GetStringAsync("/mix", Never);

        Assert.Contains("Pond weed", html, StringComparison.Ordinal);
        Assert.Contains("class=\"gauge\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Measurement_OfABucket_NarrowsWhatIsKnownHere()
    {
        var before = WebUtility.HtmlDecode(
            await caller.GetStringAsync("/materials/wheat_straw", Never)
        );
        // 5 US gallons with 3 lb in them: 72 kg/m³.
        await caller.Send(
            "/materials/wheat_straw/measure",
            "bucket",
            ("holds", "5"),
            ("empty", "1"),
            ("full", "4")
        );

        var after = WebUtility.HtmlDecode(
            await caller.GetStringAsync("/materials/wheat_straw", Never)
        );

        Assert.DoesNotContain("Measured here", before, StringComparison.Ordinal);
        Assert.Contains("Measured here: Loose, lb/yd³ was", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Measurement_ThatCannotBe_IsRefusedInASentence()
    {
        var page = await caller.Send(
            "/materials/wheat_straw/measure",
            "bucket",
            ("holds", "5"),
            ("empty", "4"),
            ("full", "1")
        );

        Assert.Contains(
            "The measurement cannot be right",
            await page.Content.ReadAsStringAsync(Never),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Sheet_WaterOfEveryLayer_IsTheSameInListAndDrawing()
    {
        await Add("leaves_mixed_dry", "Leaves", "6", "bag");
        await Add("grass_clippings_fresh", "Mowings", "4", "wheelbarrow");
        var made = await caller.Send("/mix?water=60", "sheet", ("name", "Spring heap"));
        var html = WebUtility.HtmlDecode(
            await caller.GetStringAsync(made.Headers.Location!.PathAndQuery, Never)
        );

        var listed = Found(html, "(?<f>[0-9.]+ gal) of water</p>");
        var drawn = Found(html, "<text[^>]*>(?<f>[0-9.]+ gal)</text>");
        Assert.NotEmpty(listed);
        Assert.Equal(listed, drawn);
        Assert.DoesNotMatch("[0-9] (cm|L|kg)\\b", html.Split("class=\"cautions")[0]);
    }

    private static string[] Found(string html, string pattern) =>
        [
            .. System
                .Text.RegularExpressions.Regex.Matches(
                    html,
                    pattern,
                    System.Text.RegularExpressions.RegexOptions.ExplicitCapture,
                    TimeSpan.FromSeconds(5)
                )
                .Select(m => m.Groups["f"].Value),
        ];

    [Fact]
    public async Task Undo_OfTheLastAct_PutsItBack()
    {
        await Add("wheat_straw", "Straw", "3", "bale");
        var undone = await caller.Send("/settings/changes", "/settings/changes");

        Assert.Equal(HttpStatusCode.Found, undone.StatusCode);
        Assert.DoesNotContain(
            ">Straw<",
            await caller.GetStringAsync("/stock", Never),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Watch_ADay_ShowsItInWordsAndKeepsTheWhatIf()
    {
        await Add("horse_manure_straw", "Muck", "6", "wheelbarrow");

        var html = await caller.GetStringAsync(
            "/watch?cover=lid&walls=none&air=50&turns=3%2C+5&days=21&day=4",
            Never
        );

        // 50 degrees here are Fahrenheit, which is 10 in Celsius.
        Assert.Contains(
            "as warm as the air is on average, 10 \u00b0C",
            WebUtility.HtmlDecode(html),
            StringComparison.Ordinal
        );
        Assert.Contains("Day 4: core ", html, StringComparison.Ordinal);
        Assert.Contains("value=\"lid\" selected", html, StringComparison.Ordinal);
        Assert.Contains("value=\"3, 5\"", html, StringComparison.Ordinal);
        Assert.Contains("A computation, not a measurement", html, StringComparison.Ordinal);
        Assert.Contains("&amp;how=fair&amp;days=21&amp;day=5", html, StringComparison.Ordinal);
        Assert.Equal(
            22,
            System.Text.RegularExpressions.Regex.Count(
                html,
                "<g data-day=",
                System.Text.RegularExpressions.RegexOptions.None,
                TimeSpan.FromSeconds(5)
            )
        );
        Assert.Equal(
            21,
            System.Text.RegularExpressions.Regex.Count(
                html,
                "display=\"none\"",
                System.Text.RegularExpressions.RegexOptions.None,
                TimeSpan.FromSeconds(5)
            )
        );
    }

    [Fact]
    public async Task Watch_TurnsThatCannotBeRead_AreToldBesideTheField()
    {
        await Add("horse_manure_straw", "Muck", "6", "wheelbarrow");

        var html = WebUtility.HtmlDecode(
            await caller.GetStringAsync("/watch?turns=3,+soon", Never)
        );

        Assert.Contains(
            "\"soon\" cannot be read here: write whole days",
            html,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("<g data-day=", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task HeatProof_ReadingsInFahrenheit_AreAnsweredInFahrenheit()
    {
        var log =
            "day,probe,temperature_f,event\n"
            + string.Join(
                "\n",
                Enumerable.Range(1, 15).Select(d => $"{d},core,131,{(d % 3 == 0 ? "turn" : "")}")
            );
        var page = await caller.Send(
            "/heat-proof",
            "proof",
            ("log", log),
            ("process", "windrow"),
            ("country", "us"),
            ("solids", "")
        );
        var html = WebUtility.HtmlDecode(await page.Content.ReadAsStringAsync(Never));

        Assert.Contains(
            "every probe at 131 °F or above: 15 by days",
            html,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Counted as elapsed time: 14 of 15 days and 5 of 5 turns: not met.",
            html,
            StringComparison.Ordinal
        );
        Assert.Contains("value=\"windrow\" checked", html, StringComparison.Ordinal);
        Assert.Contains("3 rules are for another kind of process", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "There are no readings yet")]
    [InlineData(
        "day,temperature_f\n1,hot",
        "line 2, column temperature_f: \"hot\" is not a number"
    )]
    [InlineData("{\"process\":\"bin\"}", "the field \"readings\" is missing")]
    public async Task HeatProof_RecordThatCannotBeRead_IsToldBesideTheField(
        string log,
        string sentence
    )
    {
        var page = await caller.Send("/heat-proof", "proof", ("log", log), ("process", "bin"));
        var html = WebUtility.HtmlDecode(await page.Content.ReadAsStringAsync(Never));

        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.Contains(sentence, html, StringComparison.Ordinal);
        Assert.Contains("id=\"log-wrong\"", html, StringComparison.Ordinal);
        Assert.DoesNotContain("record_hash", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Finish_AskedInFahrenheit_SaysTheStageAndWhatItIsReadyFor()
    {
        // 68 °F and 82.4 °F are 20 °C and 28 °C: a rise of 8 °C, class V, and not below the 8 °C of the Canadian guideline.
        var html = WebUtility.HtmlDecode(
            await caller.GetStringAsync(
                "/finish?go=1&age=150&smell=earthy&see=crumbly&room=68&top=82.4&manure=no&risk=no",
                Never
            )
        );

        Assert.Matches(@"Most likely \(about \d in 10\) it is mature\.", html);
        Assert.Contains("V: finished, hardly heats", html, StringComparison.Ordinal);
        Assert.Contains(
            "self-heating, Canadian guideline:</strong> not met",
            html,
            StringComparison.Ordinal
        );
        Assert.Contains("No seed test: sow a few", html, StringComparison.Ordinal);
        Assert.Contains("value=\"earthy\" checked", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("room=warm&top=80", "id=\"room-wrong\"")]
    [InlineData("sown=10&up=12&csown=10&cup=10", "12 germinated of 10 sown")]
    public async Task Finish_WhatCannotBeRead_IsTold(string query, string sentence)
    {
        var html = WebUtility.HtmlDecode(
            await caller.GetStringAsync("/finish?go=1&" + query, Never)
        );

        Assert.Contains(sentence, html, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"ready\"", html, StringComparison.Ordinal);
    }

    private async Task Add(string material, string name, string amount, string unit)
    {
        var added = await caller.Send(
            "/stock/add?material=" + material,
            "add",
            ("name", name),
            ("amount", amount),
            ("unit", unit),
            ("since", "2026-01-05")
        );
        Assert.Equal(HttpStatusCode.Found, added.StatusCode);
    }
}
