using System.Net;
using System.Text.Json.Nodes;
using Heapwright.App.Diary;
using Heapwright.Core.Readings;
using Microsoft.Extensions.DependencyInjection;

namespace Heapwright.Web.Tests;

/// <summary>What a phone sends when it has a connection again: kept once, at its own time, or refused with a reason.</summary>
public sealed class OutboxTests : IAsyncLifetime
{
    private static readonly CancellationToken Never = CancellationToken.None;
    private readonly SiteUnderTest site = new();
    private readonly Guid heapId = Guid.CreateVersion7();
    private HttpClient caller = null!;

    private DiaryDesk Desk => site.Services.GetRequiredService<DiaryDesk>();

    private static long Now => TimeProvider.System.GetUtcNow().ToUnixTimeMilliseconds();

    public async ValueTask InitializeAsync()
    {
        caller = site.Caller();
        await caller.OwnSite();
        Assert.True(
            (await Desk.Start.Start(HeapPageTests.Heap(heapId), EntryWay.Cli, Never)).IsDone
        );
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    [Fact]
    public async Task Reading_SentTwice_IsAnsweredTwiceAndKeptOnce()
    {
        var id = Guid.NewGuid();
        var made = Now - 3_600_000;

        var first = await Send(
            id,
            made,
            Now,
            ("tens", "50"),
            ("units", "8"),
            ("squeeze", "sponge"),
            ("smell", "earthy")
        );
        var again = await Send(
            id,
            made,
            Now + 5000,
            ("tens", "50"),
            ("units", "8"),
            ("squeeze", "sponge"),
            ("smell", "earthy")
        );

        Assert.Equal((HttpStatusCode.OK, "kept"), first);
        Assert.Equal((HttpStatusCode.OK, "already"), again);
        var entries = await Standing();
        var reading = Assert.Single(entries.OfType<TemperatureEntry>());
        Assert.Equal(58, reading.Temperature.DegreesCelsius, 6);
        Assert.Equal(made, reading.At.ToUnixTimeMilliseconds());
        Assert.Single(entries.OfType<SignEntry>());
    }

    [Theory]
    [InlineData(-185, "185 min behind")]
    [InlineData(60, "60 min ahead")]
    public async Task Reading_FromAWrongClock_IsMovedAndSaysSo(int minutesOff, string words)
    {
        var off = minutesOff * 60_000L;
        var truly = Now - 7_200_000;
        var id = Guid.NewGuid();

        var first = await Send(id, truly + off, Now + off, ("temperature", "41"));
        // The clock was put right between the two attempts.
        var again = await Send(id, truly + off, Now, ("temperature", "41"));

        Assert.Equal((HttpStatusCode.OK, "kept"), first);
        Assert.Equal((HttpStatusCode.OK, "already"), again);
        var entries = await Standing();
        var reading = Assert.Single(entries.OfType<TemperatureEntry>());
        Assert.InRange(reading.At.ToUnixTimeMilliseconds(), truly - 60_000, truly + 60_000);
        Assert.Contains(
            words,
            Assert.Single(entries.OfType<NoteEntry>()).Text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Reading_FromAClockSetInBetween_NeedsALookUntilATimeIsTyped()
    {
        // Made in 1970 by a phone that had met the site today, sent by the right time.
        var id = Guid.NewGuid();
        var seen = (Now - 3_600_000).ToString(System.Globalization.CultureInfo.InvariantCulture);

        var (status, why) = await Send(id, 1000, Now, ("temperature", "41"), ("seen", seen));
        var amended = await Send(
            id,
            1000,
            Now,
            ("temperature", "41"),
            ("seen", seen),
            ("at", "2026-11-27T10:00")
        );

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("clock was set", why, StringComparison.Ordinal);
        Assert.Equal("kept", amended.Said);
        Assert.Equal(
            "2026-11-27T10:00:00+00:00",
            Assert
                .Single((await Standing()).OfType<TemperatureEntry>())
                .At.ToString(
                    "yyyy-MM-dd'T'HH:mm:sszzz",
                    System.Globalization.CultureInfo.InvariantCulture
                )
        );
    }

    [Theory]
    [InlineData("tens", "50", "Tap both")]
    [InlineData("temperature", "99999", "99")]
    [InlineData("temperature", "warm", "warm")]
    [InlineData("at", "yesterday", "yesterday")]
    [InlineData("spot", "core", "Nothing was told")]
    public async Task Entry_ThatIsWrong_IsRefusedAndNothingIsKept(
        string field,
        string value,
        string words
    )
    {
        var (status, said) = await Send(Guid.NewGuid(), Now, Now, (field, value));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains(words, said, StringComparison.Ordinal);
        Assert.Single(await Standing());
    }

    [Fact]
    public async Task Request_WithoutTheHeaderOrFromElsewhere_IsRefused()
    {
        using var plain = new HttpRequestMessage(HttpMethod.Post, Url)
        {
            Content = Form(Guid.NewGuid(), Now, Now, ("temperature", "50")),
        };
        using var other = new HttpRequestMessage(HttpMethod.Post, Url)
        {
            Content = Form(Guid.NewGuid(), Now, Now, ("temperature", "50")),
        };
        other.Headers.Add("X-Outbox", "1");
        other.Headers.Add("Sec-Fetch-Site", "cross-site");

        Assert.Equal(HttpStatusCode.Forbidden, (await caller.SendAsync(plain, Never)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await caller.SendAsync(other, Never)).StatusCode);
        Assert.Single(await Standing());
    }

    [Fact]
    public async Task Phone_OnAnotherMachine_WritesIntoDiariesOnceItIsLetInAndNowhereElse()
    {
        site.From = IPAddress.Parse("192.168.1.30");
        Assert.Equal(
            HttpStatusCode.Forbidden,
            (await Send(Guid.NewGuid(), Now, Now, ("temperature", "50"))).Status
        );
        var (device, token, _) = await Desk.Devices.Add("phone", Never);
        Assert.Equal(
            HttpStatusCode.OK,
            (await caller.Send("/pair", "pair", ("token", token + "x"))).StatusCode
        );
        Assert.Equal(
            HttpStatusCode.Forbidden,
            (await Send(Guid.NewGuid(), Now, Now, ("temperature", "50"))).Status
        );

        await caller.Send("/pair", "pair", ("token", token));

        Assert.Equal(
            (HttpStatusCode.OK, "kept"),
            await Send(Guid.NewGuid(), Now, Now, ("temperature", "50"))
        );
        var elsewhere = await caller.Send(
            "/settings/bays",
            "bay",
            ("name", "A"),
            ("shape", "box"),
            ("height_m", "1")
        );
        Assert.Equal(HttpStatusCode.Forbidden, elsewhere.StatusCode);
        Assert.True(await Desk.Devices.Revoke(device!.Id, Never));
        Assert.Equal(
            HttpStatusCode.Forbidden,
            (await Send(Guid.NewGuid(), Now, Now, ("temperature", "50"))).Status
        );
    }

    [Fact]
    public async Task Worker_NamesItsBuildAndIsNeverOld()
    {
        var answer = await caller.GetAsync("/sw.js", Never);
        var text = await answer.Content.ReadAsStringAsync(Never);

        Assert.Matches("^const build = '[0-9a-f]{16}';\n", text);
        Assert.True(answer.Headers.CacheControl!.NoCache);
        var list = JsonNode.Parse(await caller.GetStringAsync("/offline.json", Never))!;
        Assert.Contains(
            $"/heaps/{heapId:N}/reading",
            list["pages"]!.AsArray().Select(p => p!.GetValue<string>())
        );
        foreach (var part in list["shell"]!.AsArray())
        {
            Assert.Equal(
                HttpStatusCode.OK,
                (await caller.GetAsync(part!.GetValue<string>(), Never)).StatusCode
            );
        }
    }

    [Fact]
    public async Task Label_OfAHeap_LeadsToItsReadingPage()
    {
        var html = await caller.GetStringAsync("/label", Never);
        var code = System
            .Text.RegularExpressions.Regex.Match(
                html,
                "/b/(?<c>[A-Z0-9]{6})",
                System.Text.RegularExpressions.RegexOptions.ExplicitCapture,
                TimeSpan.FromSeconds(1)
            )
            .Groups["c"]
            .Value;

        var to = await caller.GetAsync("/b/" + code.ToLowerInvariant(), Never);
        var unknown = await caller.GetAsync("/b/NOSUCH", Never);

        Assert.Equal($"/heaps/{heapId:N}/reading", to.Headers.Location!.OriginalString);
        Assert.Equal("/reading", unknown.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task Smoke_SmeltLately_IsWarnedOfOnTheHeapsPage()
    {
        await Send(Guid.NewGuid(), Now, Now, ("smell", "smoke"));

        Assert.Contains(
            "keep away, do not open the heap",
            await caller.GetStringAsync($"/heaps/{heapId:N}", Never),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(null, null)]
    [InlineData("127.0.0.1; ::1", null)]
    [InlineData("127.0.0.1, home", "home")]
    public void Proxy_ThatIsNoAddress_IsNamed(string? setting, string? wrong) =>
        Assert.Equal(wrong, Hosting.WebSettings.WrongProxy(setting));

    private string Url => "/outbox/" + heapId.ToString("N");

    private async Task<DiaryEntry[]> Standing() =>
        [.. (await Desk.Reader.Of(heapId, null, Never))!.Diary.Standing.Select(s => s.Entry)];

    private static MultipartFormDataContent Form(
        Guid id,
        long made,
        long sent,
        params (string Name, string Value)[] fields
    )
    {
        var form = new MultipartFormDataContent();
        foreach (var (name, value) in fields)
        {
            form.Add(new StringContent(value), name);
        }

        form.Add(new StringContent(id.ToString()), "id");
        form.Add(
            new StringContent(made.ToString(System.Globalization.CultureInfo.InvariantCulture)),
            "made"
        );
        form.Add(
            new StringContent(sent.ToString(System.Globalization.CultureInfo.InvariantCulture)),
            "sent"
        );
        return form;
    }

    private async Task<(HttpStatusCode Status, string Said)> Send(
        Guid id,
        long made,
        long sent,
        params (string Name, string Value)[] fields
    )
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, Url)
        {
            Content = Form(id, made, sent, fields),
        };
        request.Headers.Add("X-Outbox", "1");
        var answer = await caller.SendAsync(request, Never);
        var json = JsonNode.Parse(await answer.Content.ReadAsStringAsync(Never))!;
        return (answer.StatusCode, (json["status"] ?? json["error"])!.GetValue<string>());
    }
}
