using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Changes;
using Heapwright.App.Diary;
using Heapwright.App.Lessons;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace Heapwright.Web.Tests;

/// <summary>What a heap taught and two heaps compared, as a browser without script sees them.</summary>
public sealed class TaughtPageTests : IAsyncLifetime
{
    private const int Age = 10; // days
    private static readonly CancellationToken Never = CancellationToken.None;
    private static readonly double[] Core = [25, 42, 55, 61, 63, 62, 60];
    private readonly SiteUnderTest site = new();
    private readonly Guid first = Guid.CreateVersion7();
    private readonly Guid second = Guid.CreateVersion7();
    private readonly DateTimeOffset builtAt = TimeProvider.System.GetUtcNow().AddDays(-Age);
    private HttpClient caller = null!;

    private DiaryDesk Desk => site.Services.GetRequiredService<DiaryDesk>();

    public async ValueTask InitializeAsync()
    {
        caller = site.Caller();
        await caller.OwnSite();
        foreach (var (id, name) in new[] { (first, "First heap"), (second, "Second heap") })
        {
            var heap = HeapPageTests.Heap(id) with
            {
                Name = name,
                BuiltAt = Instant.FromDateTimeOffset(builtAt),
            };
            Assert.True((await Desk.Start.Start(heap, EntryWay.Cli, Never)).IsDone);
        }

        await Read(first, 0);
        await Read(second, -1);
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    [Fact]
    public async Task Taught_Kept_IsUsedForTheNextHeapInTheSamePlace_AndCanBeUndone()
    {
        var url = $"/heaps/{first:N}/taught";
        var page = await Html(url);
        Assert.Contains("Highest reading: 63 °C", page, StringComparison.Ordinal);
        Assert.Contains("Moisture by the hand: cannot tell", page, StringComparison.Ordinal);
        Assert.Contains("Not kept yet.", page, StringComparison.Ordinal);
        Assert.False(await IsUsedFor(second));

        var kept = await caller.Send(url, "keep", ("do", "keep"));
        Assert.Equal(HttpStatusCode.Found, kept.StatusCode);
        var lesson = (await Desk.Items.Find<KeptLesson>(TaughtHeap.IdOf(first), Never))!;
        Assert.Equal(7, lesson.Readings);
        Assert.Contains("fast_rate", lesson.Parameters.Keys, StringComparer.Ordinal);
        Assert.Contains(
            "is used; no range",
            await Html($"/heaps/{second:N}"),
            StringComparison.Ordinal
        );
        // Not for the heap that taught it: it has its readings themselves.
        Assert.False(await IsUsedFor(first));
        Assert.True(await IsUsedFor(second));

        await caller.Send(url, "keep", ("do", "off"));
        Assert.False(await IsUsedFor(second));
        await caller.Send(url, "keep", ("do", "forget"));
        Assert.Null(await Desk.Items.Find<KeptLesson>(lesson.Id, Never));
        var recorder = site.Services.GetRequiredService<SiteRecorder>();
        var last = (await Desk.Items.Latest(1, Never))[0].Act;
        Assert.Equal("acts.lesson_removed", last.What);
        Assert.True((await recorder.Undo(last.Number, Never)).IsDone);
        Assert.False((await Desk.Items.Find<KeptLesson>(lesson.Id, Never))!.IsUsed);
    }

    [Fact]
    public async Task Record_OfTheBatch_HasWhatItTaughtInShort()
    {
        Assert.Contains(
            "What it taught",
            await Html($"/heaps/{first:N}/record"),
            StringComparison.Ordinal
        );
        var taught = JsonNode.Parse(
            await caller.GetStringAsync($"/heaps/{first:N}/record.json", Never)
        )!["taught"]!;
        var peak = taught["predicted"]!
            .AsArray()
            .Single(r => r!["what"]!.GetValue<string>() == "peak_c")!;
        Assert.Equal(63, peak["measured"]!.GetValue<double>(), 1e-9);
        Assert.NotNull(peak["expected"]!["low"]);
    }

    [Fact]
    public async Task Compare_TwoAlike_CannotTell_AndWrongOnesAreRefused()
    {
        Assert.Contains("Held against", await Html("/compare"), StringComparison.Ordinal);
        var page = await Html($"/compare?a={first:N}&b={second:N}");
        Assert.Contains("It may be chance", page, StringComparison.Ordinal);
        Assert.Contains("Nothing that was told.", page, StringComparison.Ordinal);
        Assert.Contains("62 °C", page, StringComparison.Ordinal);

        Assert.Contains(
            "cannot be held against itself",
            await Html($"/compare?a={first:N}&b={first:N}"),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "nothing to leave out",
            await Html($"/compare?a={first:N}&b=turn"),
            StringComparison.Ordinal
        );
        Assert.Equal(
            HttpStatusCode.OK,
            (await caller.GetAsync($"/compare?a=none&b={first:N}&by=luck", Never)).StatusCode
        );
    }

    // Whether a forecast of a heap is asked with what others taught.
    private async Task<bool> IsUsedFor(Guid heap) =>
        OutlookQuestion.Of(
            (await Desk.Reader.Of(heap, null, Never))!,
            await SiteContents.Read(Desk.Items, Never),
            Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow()),
            DateTimeZone.Utc
        )!["earlier"]
            is not null;

    private async Task<string> Html(string url) =>
        WebUtility.HtmlDecode(await caller.GetStringAsync(url, Never)).Replace('\u00a0', ' ');

    private async Task Read(Guid heap, double warmer)
    {
        var entries = new JsonArray([
            .. Core.Select(
                (celsius, i) =>
                    (JsonNode)
                        new JsonObject
                        {
                            ["id"] = Guid.CreateVersion7().ToString(),
                            ["at"] = EntryJson.Time(builtAt.AddDays(i + 1)),
                            ["temperature_c"] = celsius + warmer,
                            ["spot"] = "core",
                        }
            ),
        ]);
        using var request = new HttpRequestMessage(
            HttpMethod.Post,
            string.Create(CultureInfo.InvariantCulture, $"/api/heaps/{heap}/entries")
        )
        {
            Content = new StringContent(entries.ToJsonString(), Encoding.UTF8, "application/json"),
        };
        request.Headers.Authorization = new(
            "Bearer",
            (await Desk.Devices.Add("pole probe", Never)).Token
        );
        var answer = await caller.SendAsync(request, Never);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Never));
    }
}
