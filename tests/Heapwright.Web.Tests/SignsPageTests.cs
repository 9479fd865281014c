using System.Net;
using System.Text.RegularExpressions;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Materials.Measurements;
using Heapwright.Core.Readings;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace Heapwright.Web.Tests;

/// <summary>The conversation about signs as a browser without script sees it.</summary>
/// <remarks>The heaps are so old that their page forecasts nothing, which would take long and is not looked at here.</remarks>
public sealed class SignsPageTests(SiteUnderTest site)
    : IClassFixture<SiteUnderTest>,
        IAsyncLifetime
{
    private const int Age = 130; // days
    private static readonly CancellationToken Never = CancellationToken.None;
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(5);
    private readonly Guid heapId = Guid.CreateVersion7();
    private HttpClient caller = null!;

    private string Heap => $"/heaps/{heapId:N}";

    private DiaryDesk Desk => site.Services.GetRequiredService<DiaryDesk>();

    public async ValueTask InitializeAsync()
    {
        caller = site.Caller();
        await caller.OwnSite();
        var heap = HeapPageTests.Heap(heapId) with
        {
            BuiltAt = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow().AddDays(-Age)),
        };
        Assert.True((await Desk.Start.Start(heap, EntryWay.Cli, Never)).IsDone);
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task Conversation_TapByTap_SettlesOnACause()
    {
        var url = "/signs";
        var asked = new List<string>();
        foreach (
            var (ask, answer) in new[]
            {
                ("worry", "worry:not_heating"),
                ("smell", "signs.smell:rotten"),
                ("squeeze_core", "signs.squeeze.core:streams"),
            }
        )
        {
            // Which question is worth most moves with the chances; these three are asked for by name.
            var page = await Get(
                url + (url.Contains('?', StringComparison.Ordinal) ? "&ask=" : "?ask=") + ask
            );
            asked.Add(QuestionOf(page));
            Assert.DoesNotContain("That is enough to go by", page, StringComparison.Ordinal);
            url = Tap(page, answer);
        }

        var last = await Get(url);
        Assert.Equal(
            [
                "What worries you?",
                "What does it smell of?",
                "Squeeze a handful from the middle: what happens?",
            ],
            asked
        );
        Assert.Contains("That is enough to go by", last, StringComparison.Ordinal);
        Assert.Contains("<h3>Too wet</h3>", last, StringComparison.Ordinal);
        Assert.Contains("squeezed in the core: water streams out", last, StringComparison.Ordinal);
        foreach (
            var part in new[] { "Tonight", "Properly", "To be sure", "Then", "Where this is from" }
        )
        {
            Assert.Contains(part, last, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Page_WithNothingTold_NamesNoCauseToActOn()
    {
        var page = await Get("/signs");

        Assert.Contains("leave the heap as it is", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Tonight", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Back_AfterATap_AsksTheSameAgain()
    {
        var one = await Get("/signs?a=worry:not_heating&ask=smell");
        var two = await Get(Tap(one, "signs.smell:sour"));
        var back = await Get(Href(two, "One back"));

        Assert.Equal(QuestionOf(one), QuestionOf(back));
        Assert.DoesNotContain("<strong>sour smell</strong>", back, StringComparison.Ordinal);
        Assert.Contains("<strong>sour smell</strong>", two, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Unknown_Tapped_IsToldAndNotAskedAgain()
    {
        var one = await Get("/signs?a=worry:not_heating&ask=smell");
        var two = await Get(Tap(one, "unknown:smell"));
        var none = await Get(Tap(one, "none:smell"));

        Assert.NotEqual(QuestionOf(one), QuestionOf(two));
        Assert.Contains("<strong>don't know</strong>", two, StringComparison.Ordinal);
        Assert.NotEqual(QuestionOf(one), QuestionOf(none));
        Assert.Contains("<strong>no smell</strong>", none, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Answers_OfAQuestionWithSeveral_AddUp()
    {
        var one = await Get("/signs?a=worry:smell&a=signs.see:matted");
        var more = await Get(Href(one, "and also …", after: "matted layers"));
        var both = await Get(Tap(more, "signs.see:slimy"));

        Assert.Contains("<strong>matted layers</strong>", both, StringComparison.Ordinal);
        Assert.Contains("<strong>slimy</strong>", both, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a=signs.smell:lavender", "\"lavender\"")]
    [InlineData("a=heap.age_days:-5", "-5")]
    [InlineData("a=heap.age_days:soon", "\"soon\"")]
    [InlineData("a=reading:999", "999")]
    [InlineData("a=heap.volume_m3:1e9", "is no answer that this page offers")]
    [InlineData("a=signs.smell:sour%22%2C%22x%22%3A1", "is no answer that this page offers")]
    [InlineData("a=%3Cscript%3E", "is no answer that this page offers")]
    [InlineData("a=none:age", "is no answer that this page offers")]
    [InlineData("a=unknown:everything", "is no answer that this page offers")]
    [InlineData("a=", "is no answer that this page offers")]
    public async Task Address_ThatWasTamperedWith_IsRefusedInOneSentence(string query, string found)
    {
        var raw = await caller.GetStringAsync("/signs?" + query, Never);
        var page = WebUtility.HtmlDecode(raw);

        Assert.Contains("Something needs another look", page, StringComparison.Ordinal);
        Assert.Contains(found, page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script>", raw, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"answer", page, StringComparison.Ordinal);
        Assert.Contains("Start again", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Address_WithTooManyAnswers_IsRefused()
    {
        var page = await Get("/signs?" + string.Join('&', Enumerable.Repeat("a=worry:wet", 61)));

        Assert.Contains(
            "61 answers in this address, and at most 60",
            page,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Probe_TypedInTheCore_CountsAsAReading()
    {
        var asks = await Get("/signs?a=worry:not_heating&ask=feel_core");
        var page = await Get("/signs?a=worry:not_heating&probe=58,5");
        var wrong = await Get("/signs?a=worry:not_heating&ask=feel_core&probe=warm");

        Assert.Contains("Or what a probe in the core reads (°C)", asks, StringComparison.Ordinal);
        Assert.Contains("58.5 °C", page, StringComparison.Ordinal);
        Assert.Contains("value=\"reading:58.5\"", page, StringComparison.Ordinal);
        Assert.Contains("is not a number that can be read", wrong, StringComparison.Ordinal);
        Assert.Contains("class=\"answer", wrong, StringComparison.Ordinal);
    }

    [Fact]
    public async Task HeapPage_LeadsToItsConversation_WhichKnowsItsDiary()
    {
        await caller.Send(Heap, "reading", ("temperature", "41"), ("unit", "c"));
        var heap = await Get(Heap);
        var page = await Get(Href(heap, "Something wrong?"));

        Assert.Contains("Taken from its diary and the season", page, StringComparison.Ordinal);
        Assert.Contains("130 days old", page, StringComparison.Ordinal);
        Assert.Contains("built of Grass clippings, fresh", page, StringComparison.Ordinal);
        Assert.Contains("one reading, 41 °C", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stock_AtHand_IsToldInItsOwnMeasureOnThePage()
    {
        var stock = new StockEntry
        {
            Id = Guid.CreateVersion7(),
            Material = "cardboard_shredded",
            Name = "card from next door",
            Amount = 500,
            Unit = "kg",
            Since = new LocalDate(2026, 11, 1),
        };
        Assert.True((await site.Services.GetRequiredService<KeepStock>().Add(stock, Never)).IsDone);

        var page = await Get(
            Heap + "/signs?a=worry:wet&a=signs.smell:rotten&a=signs.squeeze.core:streams"
        );
        var unsized = await Get(
            "/signs?a=worry:wet&a=signs.smell:rotten&a=signs.squeeze.core:streams"
        );

        Assert.Matches(@"From stock: about \d+ kg \(.*\) of card from next door\.", page);
        Assert.Contains(
            "card from next door: only if it is still dry",
            page,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("From stock", unsized, StringComparison.Ordinal);
        Assert.Contains("the size of the heap is not known", unsized, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Conversation_WrittenIntoTheDiary_StandsThereOnce()
    {
        var url =
            Heap
            + "/signs?a=worry:smell&a=signs.smell:ammonia&a=signs.squeeze.core:sponge&a=reading:61";
        var html = await caller.GetStringAsync(url, Never);
        var id = Regex
            .Match(
                html,
                "name=\"id\" value=\"(?<v>[0-9a-f]{32})\"",
                RegexOptions.ExplicitCapture,
                Limit
            )
            .Groups["v"]
            .Value;
        var kept = await caller.Send(url, "signs", ("id", id));
        var again = await caller.Send(url, "signs", ("id", id));

        Assert.Equal(HttpStatusCode.Found, kept.StatusCode);
        Assert.Equal(HttpStatusCode.Found, again.StatusCode);
        var entries = (await Desk.Reader.Of(heapId, null, Never))!
            .Diary.Standing.Select(s => s.Entry)
            .ToArray();
        var sign = Assert.Single(entries.OfType<SignEntry>());
        Assert.Equal(["ammonia"], sign.Smell);
        Assert.Equal((SignPlace.Core, SqueezeWord.Sponge), Assert.Single(sign.Squeeze));
        Assert.Equal(
            61,
            Assert.Single(entries.OfType<TemperatureEntry>()).Temperature.DegreesCelsius,
            6
        );
        var note = Assert.Single(entries.OfType<NoteEntry>());
        Assert.Contains("Too much nitrogen", note.Text, StringComparison.Ordinal);
        Assert.Contains("in 100", note.Text, StringComparison.Ordinal);
        Assert.Contains("Too much nitrogen", await Get(Heap), StringComparison.Ordinal);
        // It is too soon to ask whether it helped.
        Assert.DoesNotContain("Did it help?", await Get(Heap), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(4, true)]
    [InlineData(3, false)]
    public async Task Helped_SomeDaysAfterTheConclusion_IsAskedOnceAndKept(
        int daysAgo,
        bool isAsked
    )
    {
        await Conclude(daysAgo);

        var before = await Get(Heap);
        Assert.Equal(isAsked, before.Contains("Did it help?", StringComparison.Ordinal));
        if (!isAsked)
        {
            return;
        }

        var kept = await caller.Send(Heap, "helped", ("helped", "no"));
        Assert.Equal(HttpStatusCode.Found, kept.StatusCode);
        var after = await Get(Heap);
        Assert.DoesNotContain("id=\"helped\"", after, StringComparison.Ordinal);
        Assert.Contains("Did it help? No.", after, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("too_wet", true)]
    [InlineData(null, false)]
    public async Task Helped_No_IsSaidAtTheNextReadingWhereTheCauseWasKept(
        string? cause,
        bool isSaid
    )
    {
        await Desk.Entries.Record(
            heapId,
            [SignsConclusion.Note(Head(5), "Signs read. Too wet: 70 in 100.", cause)],
            Never
        );
        await caller.Send(Heap, "helped", ("helped", "no"));

        var page = await Get(Heap + "/signs?a=worry:not_heating&a=signs.squeeze.core:drips");

        Assert.Equal(
            isSaid,
            page.Contains(
                "what was done against \"Too wet\" did not help",
                StringComparison.Ordinal
            )
        );
    }

    [Fact]
    public async Task Helped_WithAnotherWord_IsRefusedAndKeepsNothing()
    {
        await Conclude(6);

        var answer = await caller.Send(Heap, "helped", ("helped", "perhaps"));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("id=\"helped\"", await Get(Heap), StringComparison.Ordinal);
        Assert.Single(
            (await Desk.Reader.Of(heapId, null, Never))!
                .Diary.Standing.Select(s => s.Entry)
                .OfType<NoteEntry>()
        );
    }

    [Fact]
    public async Task Helped_AboutAnOrdinaryNote_IsNotAsked()
    {
        await Desk.Entries.Record(heapId, [Head(5) with { Text = "Signs read. Too wet." }], Never);

        Assert.DoesNotContain("Did it help?", await Get(Heap), StringComparison.Ordinal);
    }

    private async Task Conclude(int daysAgo) =>
        await Desk.Entries.Record(
            heapId,
            [SignsConclusion.Note(Head(daysAgo), "Signs read. Too wet: 70 in 100.")],
            Never
        );

    private NoteEntry Head(int daysAgo)
    {
        var now = TimeProvider.System.GetUtcNow();
        return new NoteEntry
        {
            Id = Guid.CreateVersion7(),
            HeapId = heapId,
            At = now.AddDays(-daysAgo),
            Zone = "Europe/London",
            ReceivedAt = now,
            Way = EntryWay.Page,
            Text = "-",
        };
    }

    private async Task<string> Get(string url) =>
        WebUtility.HtmlDecode(await caller.GetStringAsync(url, Never));

    private static string QuestionOf(string page) =>
        Regex
            .Match(
                page,
                "<h2 id=\"question\"[^>]*>(?<q>[^<]*)<",
                RegexOptions.ExplicitCapture,
                Limit
            )
            .Groups["q"]
            .Value;

    // What a browser sends when a button of the question's form is pressed.
    private static string Tap(string page, string answer)
    {
        var form = Regex.Match(
            page,
            "<form method=\"get\" action=\"(?<a>[^\"]*)\"[^>]*>(?<f>.*?)</form>",
            RegexOptions.Singleline | RegexOptions.ExplicitCapture,
            Limit
        );
        Assert.Contains(
            $"name=\"a\" value=\"{answer}\"",
            form.Groups["f"].Value,
            StringComparison.Ordinal
        );
        var hidden = Regex
            .Matches(
                form.Groups["f"].Value,
                "type=\"hidden\" name=\"a\" value=\"(?<v>[^\"]*)\"",
                RegexOptions.ExplicitCapture,
                Limit
            )
            .Select(m => m.Groups["v"].Value);
        return form.Groups["a"].Value
            + "?"
            + string.Join('&', hidden.Append(answer).Select(v => "a=" + Uri.EscapeDataString(v)));
    }

    private static string Href(string page, string text, string after = "<main")
    {
        var from = page.IndexOf(after, StringComparison.Ordinal);
        Assert.True(from >= 0, after);
        var at = page.IndexOf(text, from, StringComparison.Ordinal);
        Assert.True(at >= 0, text);
        var href = page.LastIndexOf("href=\"", at, StringComparison.Ordinal) + 6;
        return page[href..page.IndexOf('"', href)];
    }
}
