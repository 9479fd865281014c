using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Ical.Net;
using Microsoft.Extensions.DependencyInjection;
using nietras.SeparatedValues;

namespace Heapwright.Web.Tests;

/// <summary>Secret addresses: the calendar, and what is shared to look at.</summary>
public sealed partial class LinkPageTests : IAsyncLifetime
{
    private static readonly CancellationToken Never = CancellationToken.None;
    private readonly SiteUnderTest site = new();
    private readonly Guid heapId = Guid.CreateVersion7();
    private HttpClient caller = null!;

    private DiaryDesk Desk => site.Services.GetRequiredService<DiaryDesk>();

    public async ValueTask InitializeAsync()
    {
        caller = site.Caller();
        await caller.OwnSite();
        Assert.True(
            (
                await Desk.Start.Start(
                    HeapPageTests.Heap(heapId) with
                    {
                        Name = Hostile.Name,
                    },
                    EntryWay.Cli,
                    Never
                )
            ).IsDone
        );
        await Record(
            new TestedDeed { Test = HomeTest.Seeds },
            new SpreadDeed { Bed = "Bed of Berta", Litres = 40 },
            new AddedDeed
            {
                Ingredients =
                [
                    new AddedStuff
                    {
                        Material = "wheat_straw",
                        Name = "Straw of Bruno",
                        Giver = "Farmer Giles",
                        Value = 2,
                        Unit = "Brunos barrow",
                    },
                ],
            }
        );
        await caller.Send($"/heaps/{heapId:N}", "note", ("text", "Anna was here"));
        await caller.Send(
            $"/heaps/{heapId:N}",
            "reading",
            ("temperature", "52.5"),
            ("unit", "c"),
            ("spot", "core")
        );
        await caller.Send(
            $"/heaps/{heapId:N}",
            "reading",
            ("temperature", "53"),
            ("unit", "c"),
            ("spot", "core")
        );
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    [Fact]
    public async Task Calendar_MadeOnThePage_IsWholeAndKeepsItsIds()
    {
        var url = await Address("calendar");
        var answer = await caller.GetAsync(url, Never);
        var bytes = await answer.Content.ReadAsByteArrayAsync(Never);
        var text = Encoding.UTF8.GetString(bytes);

        Assert.Equal("text/calendar", answer.Content.Headers.ContentType!.MediaType);
        Assert.True(answer.Headers.CacheControl!.Private);
        Assert.Contains(
            "noindex",
            answer.Headers.GetValues("X-Robots-Tag").Single(),
            StringComparison.Ordinal
        );
        // RFC 5545, 3.1: lines end in CRLF and hold at most 75 octets.
        Assert.DoesNotContain('\n', text.Replace("\r\n", "", StringComparison.Ordinal));
        Assert.All(
            text.Split("\r\n"),
            line => Assert.InRange(Encoding.UTF8.GetByteCount(line), 0, 75)
        );
        Assert.StartsWith("BEGIN:VCALENDAR\r\n", text, StringComparison.Ordinal);
        Assert.EndsWith("END:VCALENDAR\r\n", text, StringComparison.Ordinal);
        // A forecast may add its own day at any time.
        var read = Assert.Single(Events(text));
        var begun = (await Desk.Reader.Of(heapId, null, Never))!
            .Events.Single(e => e.Deed is TestedDeed)
            .Id;
        Assert.Equal($"{begun:D}-read@heapwright", read.Uid);
        Assert.Equal(
            Hostile.Name.ReplaceLineEndings("\n") + ": count the seedlings of the seed test.",
            read.Summary!.ReplaceLineEndings("\n")
        );
        Assert.False(read.DtStart!.HasTime);
        Assert.NotNull(read.DtStamp);
        Assert.Equal(read.DtStamp, read.LastModified);
        Assert.True(read.Sequence > 0);
        Assert.DoesNotContain("Anna", text, StringComparison.Ordinal);
        var again = Assert.Single(Events(await caller.GetStringAsync(url, Never)));
        Assert.Equal(
            (read.Uid, read.DtStart, read.DtEnd, read.DtStamp, read.Sequence),
            (again.Uid, again.DtStart, again.DtEnd, again.DtStamp, again.Sequence)
        );
    }

    [Fact]
    public async Task Calendar_TakenBackOrUnknown_IsNotFound()
    {
        var first = await Address("calendar");
        var second = await Address("calendar");
        Assert.Equal(HttpStatusCode.NotFound, await Status(first));
        Assert.Equal(HttpStatusCode.OK, await Status(second));

        await Revoke("revoke");

        Assert.Equal(HttpStatusCode.NotFound, await Status(second));
        Assert.Equal(HttpStatusCode.NotFound, await Status("/calendar/hwc_guess.ics"));
        var share = await Address("share", ("heap", ""), ("days", "7"));
        Assert.Equal(
            HttpStatusCode.NotFound,
            await Status(share.Replace("/s/", "/calendar/", StringComparison.Ordinal) + ".ics")
        );
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Share_OfAHeapOrTheYard_ShowsItWithoutNamesAndWithoutAWayOn(bool heap)
    {
        var url = await Address(
            "share",
            ("heap", heap ? heapId.ToString("N") : ""),
            ("days", "30")
        );
        site.From = IPAddress.Parse("192.168.1.20");
        var answer = await site.Caller().GetAsync(url, Never);
        var html = await answer.Content.ReadAsStringAsync(Never);
        var text = WebUtility.HtmlDecode(html);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("53 °C", text, StringComparison.Ordinal);
        Assert.Contains("Wheat straw", text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("<svg class=\"chart\"", html, StringComparison.Ordinal);
        Assert.All(
            new[]
            {
                "Anna",
                "Giles",
                "Bruno",
                "Berta",
                "<form",
                "<script",
                "<b>",
                " href=\"/heaps",
            },
            name => Assert.DoesNotContain(name, html, StringComparison.Ordinal)
        );
        Assert.Empty(Ways().Matches(html).Select(m => m.Value));
        Assert.Contains("name=\"robots\" content=\"noindex", html, StringComparison.Ordinal);
        Assert.Contains(
            "noindex",
            answer.Headers.GetValues("X-Robots-Tag").Single(),
            StringComparison.Ordinal
        );
        Assert.Equal("no-referrer", answer.Headers.GetValues("Referrer-Policy").Single());
    }

    [Fact]
    public async Task Share_TakenBackOrUnknown_IsNotFoundAndLeadsNowhere()
    {
        var url = await Address("share", ("heap", heapId.ToString("N")), ("days", "0"));
        Assert.Equal(HttpStatusCode.OK, await Status(url));
        await Revoke("unshare");

        foreach (var gone in new[] { url, "/s/hws_guess" })
        {
            var answer = await caller.GetAsync(gone, Never);
            var html = await answer.Content.ReadAsStringAsync(Never);

            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
            Assert.DoesNotContain("Top plot", html, StringComparison.Ordinal);
            Assert.Empty(Ways().Matches(html).Select(m => m.Value));
        }
    }

    [Fact]
    public async Task Secret_ManyTries_AreSlowedDown()
    {
        site.From = IPAddress.Parse("203.0.113.77");
        var statuses = new List<HttpStatusCode>();
        for (var i = 0; i < 61; i++)
        {
            statuses.Add(await Status($"/s/hws_guess{i}"));
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, statuses[^1]);
        Assert.DoesNotContain(HttpStatusCode.TooManyRequests, statuses[..60]);
    }

    [Fact]
    public async Task Links_FromAnotherMachine_CannotBeMade()
    {
        site.From = IPAddress.Parse("192.168.1.20");

        Assert.Equal(
            HttpStatusCode.Forbidden,
            (await caller.Send("/settings/links", "calendar")).StatusCode
        );
    }

    [Fact]
    public async Task Names_ThatAreHostile_AreHarmlessInPagesTablesAndPapers()
    {
        var stock = new StockEntry
        {
            Id = Guid.CreateVersion7(),
            Material = "wheat_straw",
            Name = Hostile.Name,
            Amount = 2.5,
            Unit = "bucket",
            Since = new NodaTime.LocalDate(2026, 11, 1),
            Giver = "@SUM(1)",
            Note = "-1+1",
        };
        Assert.True((await site.Services.GetRequiredService<KeepStock>().Add(stock, Never)).IsDone);
        var page = $"/heaps/{heapId:N}";
        foreach (
            var url in new[] { "/", "/stock", "/heaps", page, page + "/record", "/settings/links" }
        )
        {
            Assert.DoesNotContain(
                "<script>alert",
                await caller.GetStringAsync(url, Never),
                StringComparison.Ordinal
            );
        }

        var table = await caller.GetAsync("/stock.csv", Never);
        Assert.Equal("stock.csv", table.Content.Headers.ContentDisposition!.FileName);
        var cells = Cells(await table.Content.ReadAsStringAsync(Never));
        Assert.Equal("'" + Hostile.Name, cells["name"]);
        Assert.Equal("2.5", cells["amount"]);
        Assert.Equal("'@SUM(1)", cells["giver"]);
        Assert.Equal("'-1+1", cells["note"]);

        var diary = await caller.GetAsync(page + "/diary.csv", Never);
        Assert.Equal("diary.csv", diary.Content.Headers.ContentDisposition!.FileName);
        Assert.Contains(
            ",temperature,52.5,core,",
            await diary.Content.ReadAsStringAsync(Never),
            StringComparison.Ordinal
        );
        foreach (var url in new[] { page + "/record.pdf", page + "/record.json" })
        {
            var file = await caller.GetAsync(url, Never);
            Assert.Equal(HttpStatusCode.OK, file.StatusCode);
            Assert.StartsWith(
                "batch.",
                file.Content.Headers.ContentDisposition!.FileName,
                StringComparison.Ordinal
            );
        }
    }

    private static IEnumerable<Ical.Net.CalendarComponents.CalendarEvent> Events(string text) =>
        Calendar
            .Load(text)!
            .Events.Where(e => e.Uid!.EndsWith("-read@heapwright", StringComparison.Ordinal));

    private static Dictionary<string, string> Cells(string csv)
    {
        using var reader = Sep.New(',')
            .Reader(o => o with { Unescape = true })
            .FromText(csv.TrimStart('\uFEFF'));
        Assert.True(reader.MoveNext());
        var row = reader.Current;
        var cells = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var name in reader.Header.ColNames)
        {
            cells[name] = row[name].ToString();
        }

        return cells;
    }

    private async Task Record(params HeapDeed[] deeds)
    {
        var arrival = await Desk.Entries.Arrive(heapId, EntryWay.Page, Never);
        Assert.NotNull(arrival);
        var now = TimeProvider.System.GetUtcNow();
        var outcomes = await Desk.Entries.Record(
            heapId,
            [
                .. deeds.Select(d => new EventEntry
                {
                    Id = Guid.CreateVersion7(),
                    HeapId = heapId,
                    At = now,
                    ReceivedAt = now,
                    Way = EntryWay.Page,
                    Deed = d,
                }),
            ],
            Never
        );
        Assert.All(outcomes, o => Assert.Equal(AppendStatus.Kept, o.Status));
    }

    private async Task<string> Address(string form, params (string, string)[] fields)
    {
        var answer = await caller.Send("/settings/links", form, fields);
        var html = await answer.Content.ReadAsStringAsync(Never);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return new Uri(Code().Match(html).Groups["u"].Value).PathAndQuery;
    }

    private async Task Revoke(string form)
    {
        var html = await caller.GetStringAsync("/settings/links", Never);
        var id = Button()
            .Match(html[html.IndexOf($"value=\"{form}\"", StringComparison.Ordinal)..]);
        await caller.Send("/settings/links", form, ("link", id.Groups["v"].Value));
    }

    private async Task<HttpStatusCode> Status(string url) =>
        (await caller.GetAsync(url, Never)).StatusCode;

    [GeneratedRegex(
        "<code>(?<u>[^<]*)</code>",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Code();

    [GeneratedRegex(
        "name=\"link\" value=\"(?<v>[^\"]*)\"",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Button();

    [GeneratedRegex("<a [^>]*>", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Ways();
}
