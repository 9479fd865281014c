using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace Heapwright.Web.Tests;

/// <summary>A heap's page and its endpoint, as a browser without script and a device see them.</summary>
public sealed class HeapPageTests : IAsyncLifetime
{
    private const string First = "0198f3a0-7c1e-7b60-9d2e-3f1f6f0a4c11";
    private static readonly CancellationToken Never = CancellationToken.None;
    private readonly SiteUnderTest site = new();
    private readonly Guid heapId = Guid.CreateVersion7();
    private HttpClient caller = null!;

    private string Page => $"/heaps/{heapId:N}";

    private DiaryDesk Desk => site.Services.GetRequiredService<DiaryDesk>();

    public async ValueTask InitializeAsync()
    {
        caller = site.Caller();
        await caller.Send(
            "/",
            "own",
            ("name", "Top plot"),
            ("zone", "Europe/London"),
            ("units", "metric")
        );
        var outcome = await Desk.Start.Start(Heap(heapId), EntryWay.Cli, Never);
        Assert.True(outcome.IsDone);
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    [Fact]
    public async Task Reading_TypedOnThePage_StandsInTheDiaryOnce()
    {
        var html = await caller.GetStringAsync(Page, Never);
        var kept = await caller.Send(
            Page,
            "reading",
            ("temperature", "52.5"),
            ("unit", "c"),
            ("spot", "side"),
            ("depth", "30")
        );
        Assert.Equal(HttpStatusCode.Found, kept.StatusCode);
        var after = await caller.GetStringAsync(kept.Headers.Location!, Never);

        Assert.Contains("boiling water", html, StringComparison.Ordinal);
        Assert.Contains("It is in the diary", after, StringComparison.Ordinal);
        Assert.Contains("side, 30 cm deep", after, StringComparison.Ordinal);
        var record = await Desk.Reader.Of(heapId, null, Never);
        Assert.Equal(2, record!.Diary.Standing.Count);
    }

    [Fact]
    public async Task Reading_InTheWrongUnit_IsAskedAndAnsweredWithOneTap()
    {
        await caller.Send(Page, "reading", ("temperature", "140"), ("unit", "c"));
        var html = await caller.GetStringAsync(Page, Never);
        Assert.Contains(
            "Yes, 60 °C was meant",
            WebUtility.HtmlDecode(html),
            StringComparison.Ordinal
        );
        var reading = (await Desk.Reader.Of(heapId, null, Never))!.Diary.Standing.Single(s =>
            s.Entry is TemperatureEntry
        );

        await caller.Send(Page, "answer", ("entry", reading.Entry.Id.ToString("N")));

        var record = await Desk.Reader.Of(heapId, null, Never);
        var now = (TemperatureEntry)
            record!.Diary.Standing.Single(s => s.Entry is TemperatureEntry).Entry;
        Assert.Equal(60, now.Temperature.DegreesCelsius, 6);
        Assert.True(now.GivenInFahrenheit);
    }

    [Fact]
    public async Task Forms_SignDeedNote_GoIntoTheDiary()
    {
        await caller.Send(
            Page,
            "sign",
            ("squeeze", "sponge"),
            ("place", "outside"),
            ("smell", "earthy")
        );
        await caller.Send(Page, "deed", ("do", "turn"), ("how", "good"), ("part", "outside_in"));
        await caller.Send(Page, "deed", ("do", "water"), ("water", "20"));
        await caller.Send(Page, "note", ("text", "<b>steam</b>"));
        var empty = await caller.Send(Page, "sign", ("place", "core"));

        var html = WebUtility.HtmlDecode(await caller.GetStringAsync(Page, Never));
        Assert.Contains(
            "squeezed: outside like a wrung-out sponge; smelt: earthy",
            html,
            StringComparison.Ordinal
        );
        Assert.Contains("the outside into the middle", html, StringComparison.Ordinal);
        Assert.Contains("watered with 20 L", html, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "<b>steam</b>",
            await caller.GetStringAsync(Page, Never),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "at least one sign",
            await empty.Content.ReadAsStringAsync(Never),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Form_ThatItsPageNoLongerHas_ShowsThePageAsItStandsNow()
    {
        using var answer = await caller.Send(Page, "deed", ("_handler", "no-such-form"));
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        var shown = await caller.GetStringAsync(answer.Headers.Location, Never);
        Assert.Contains("This is how it stands now", shown, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Yard_HeapInNoBay_IsShownAlsoWhereNoBayIsMeasured()
    {
        var yard = WebUtility.HtmlDecode(await caller.GetStringAsync("/", Never));
        Assert.Contains(Page, yard, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Heap_MovedPartedAndPutTogether_IsToldInTheDiary()
    {
        var bay = await site.NewBay("The far bay");
        await caller.Send(Page, "deed", ("do", "merge"), ("other", ""));
        await caller.Send(Page, "deed", ("do", "move"), ("bay", bay.Id.ToString("N")));
        await caller.Send(Page, "deed", ("do", "split"), ("share", "40"));
        var wrong = await caller.Send(Page, "deed", ("do", "split"), ("share", "100"));
        var nowhere = await caller.Send(Page, "deed", ("do", "move"), ("bay", "none"));

        var html = WebUtility.HtmlDecode(await caller.GetStringAsync(Page, Never));
        Assert.Contains("moved to another bay", html, StringComparison.Ordinal);
        Assert.Contains("40 % taken away", html, StringComparison.Ordinal);
        Assert.Contains("Another heap was put onto this one", html, StringComparison.Ordinal);
        foreach (var refused in new[] { wrong, nowhere })
        {
            Assert.Contains(
                "role=\"alert\"",
                await refused.Content.ReadAsStringAsync(Never),
                StringComparison.Ordinal
            );
        }

        var record = await Desk.Reader.Of(heapId, null, Never);
        // Built, put together, moved, parted.
        Assert.Equal(4, record!.Diary.Standing.Count);
        Assert.Equal(bay.Id, record.Place.Bay);
    }

    [Fact]
    public async Task Entry_StruckOutOnThePage_NoLongerStands()
    {
        await caller.Send(Page, "reading", ("temperature", "52"), ("unit", "c"));
        var entry = (await Desk.Reader.Of(heapId, null, Never))!
            .Diary.Standing.Single(s => s.Entry is TemperatureEntry)
            .Entry;

        var replaced = await caller.Send(
            $"{Page}/correct/{entry.Id:N}",
            "replace",
            ("temperature", "53"),
            ("unit", "c"),
            ("spot", "core")
        );
        var second = (await Desk.Reader.Of(heapId, null, Never))!
            .Diary.Standing.Single(s => s.Entry is TemperatureEntry)
            .Entry;
        await caller.Send($"{Page}/correct/{second.Id:N}", "strike");

        Assert.Equal(HttpStatusCode.Found, replaced.StatusCode);
        Assert.Equal(53, ((TemperatureEntry)second).Temperature.DegreesCelsius, 6);
        // The correction was taken back, so the reading as it was first made stands again.
        var left = (await Desk.Reader.Of(heapId, null, Never))!.Diary;
        Assert.Equal(
            52,
            ((TemperatureEntry)left.Standing.Single(s => s.Entry is TemperatureEntry).Entry)
                .Temperature
                .DegreesCelsius,
            6
        );
    }

    [Fact]
    public async Task Device_WithItsToken_SendsAndIsAnsweredEntryByEntry()
    {
        var token = await Token();
        var body = $$"""
            [{"id":"{{First}}","at":"{{Now()}}","temperature_c":58,"spot":"core"},
             {"id":"0198f3a0-7c1e-7b60-9d2e-3f1f6f0a4c12","at":"{{Now()}}","do":"turn"},
             {"id":"0198f3a0-7c1e-7b60-9d2e-3f1f6f0a4c13","at":"{{Now()}}","temperatur_c":58}]
            """;

        var first = await Send(body, token);
        var again = await Send(body, token);
        var changed = await Send(body.Replace(":58,", ":59,", StringComparison.Ordinal), token);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, first.StatusCode);
        Assert.Equal(["kept", "kept", "refused"], await Statuses(first));
        Assert.Contains(
            "nearest is \\\"temperature_c\\\"",
            await first.Content.ReadAsStringAsync(Never),
            StringComparison.Ordinal
        );
        Assert.Equal(["already", "already", "refused"], await Statuses(again));
        Assert.Equal(["refused", "already", "refused"], await Statuses(changed));
        Assert.Equal(3, (await Desk.Reader.Verify(heapId, Never)).Entries);
    }

    [Fact]
    public async Task Device_WithoutAGoodToken_IsTurnedAway()
    {
        var token = await Token();
        var body = $$"""{"id":"{{First}}","at":"{{Now()}}","temperature_c":58}""";
        var device = (await Desk.Devices.All(Never)).Single();
        Assert.Equal(HttpStatusCode.OK, (await Send(body, token)).StatusCode);

        Assert.Equal(HttpStatusCode.Unauthorized, (await Send(body, null)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await Send(body, token[..^1])).StatusCode);
        Assert.True(await Desk.Devices.Revoke(device.Id, Never));
        Assert.Equal(HttpStatusCode.Unauthorized, (await Send(body, token)).StatusCode);
    }

    [Theory]
    [InlineData("not json", HttpStatusCode.BadRequest)]
    [InlineData("[]", HttpStatusCode.BadRequest)]
    [InlineData("{}", HttpStatusCode.UnprocessableEntity)]
    public async Task Device_ThatSendsNonsense_IsToldInOneSentence(
        string body,
        HttpStatusCode status
    )
    {
        var answer = await Send(body, await Token());

        Assert.Equal(status, answer.StatusCode);
        Assert.NotEmpty(await answer.Content.ReadAsStringAsync(Never));
        Assert.Equal(1, (await Desk.Reader.Verify(heapId, Never)).Entries);
    }

    [Fact]
    public async Task Device_ToAHeapThatIsNotThere_IsTold()
    {
        var token = await Token();

        var answer = await Send("[]", token, Guid.CreateVersion7());

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task Device_NamedOnThePage_ShowsItsTokenOnce()
    {
        var page = await caller.Send("/settings/devices", "device", ("name", "pole probe"));
        var html = await page.Content.ReadAsStringAsync(Never);

        Assert.Contains("hwd_", html, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "hwd_",
            await caller.GetStringAsync("/settings/devices", Never),
            StringComparison.Ordinal
        );
    }

    internal static KeptHeap Heap(Guid id) =>
        new()
        {
            Id = id,
            Name = "Left bay",
            BuiltAt = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow().AddDays(-5)),
            Zone = "Europe/London",
            Question = StartHeap.ToElement(
                JsonNode.Parse(
                    """{"bin":{"shape":"ring","diameter_m":1,"height_m":1},"ingredients":[{"material":"grass_clippings_fresh","amount":{"value":8,"unit":"wheelbarrow"}}]}"""
                )!
            ),
        };

    internal static string Now() => EntryJson.Time(TimeProvider.System.GetUtcNow());

    private async Task<string> Token() => (await Desk.Devices.Add("pole probe", Never)).Token;

    private async Task<HttpResponseMessage> Send(string body, string? token, Guid? heap = null)
    {
        using var request = new HttpRequestMessage(
            HttpMethod.Post,
            $"/api/heaps/{heap ?? heapId}/entries"
        )
        {
            Content = new StringContent(body, Encoding.UTF8, "application/json"),
        };
        request.Headers.Authorization = token is null
            ? null
            : new AuthenticationHeaderValue("Bearer", token);
        return await caller.SendAsync(request, Never);
    }

    private static async Task<string[]> Statuses(HttpResponseMessage answer) =>
        [
            .. JsonNode.Parse(await answer.Content.ReadAsStringAsync(Never))!["results"]!
                .AsArray()
                .Select(r => r!["status"]!.GetValue<string>()),
        ];
}
