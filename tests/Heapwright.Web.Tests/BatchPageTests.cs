using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Batches;
using Heapwright.App.Diary;
using Heapwright.App.Texts;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace Heapwright.Web.Tests;

/// <summary>The record of a batch, and the way from a material to a bed and back.</summary>
public sealed class BatchPageTests(SiteUnderTest site)
    : IClassFixture<SiteUnderTest>,
        IAsyncLifetime
{
    private const int Age = 130; // days: so old that its page forecasts nothing
    private static readonly CancellationToken Never = CancellationToken.None;
    private readonly Guid heapId = Guid.CreateVersion7();
    private readonly DateTimeOffset builtAt = TimeProvider.System.GetUtcNow().AddDays(-Age);
    private HttpClient caller = null!;

    private DiaryDesk Desk => site.Services.GetRequiredService<DiaryDesk>();

    public async ValueTask InitializeAsync()
    {
        caller = site.Caller();
        await caller.OwnSite();
        var heap = HeapPageTests.Heap(heapId) with
        {
            Name = "Record bay",
            BuiltAt = Instant.FromDateTimeOffset(builtAt),
        };
        Assert.True((await Desk.Start.Start(heap, EntryWay.Cli, Never)).IsDone);
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task Record_OfABatch_TellsWhatWentInWhatWasDoneAndWhereItWent()
    {
        for (var day = 1; day <= 16; day++)
        {
            await Sent($$"""{"temperature_c":60,"spot":"core","at":"{{At(day)}}"}""");
        }

        await Sent($$"""{"do":"turn","at":"{{At(4)}}"}""");
        await Sent($$"""{"do":"spread","bed":"Bean row","l":120,"at":"{{At(100)}}"}""");
        var page = await caller.GetStringAsync($"/heaps/{heapId:N}/record", Never);
        foreach (
            var part in new[]
            {
                "Record bay",
                "Grass clippings, fresh",
                "Bean row",
                "120 L",
                "German",
                "entries are as they were written",
            }
        )
        {
            Assert.Contains(part, WebUtility.HtmlDecode(page), StringComparison.OrdinalIgnoreCase);
        }

        var json = JsonNode.Parse(
            await caller.GetStringAsync($"/heaps/{heapId:N}/record.json", Never)
        )!;
        Assert.Equal(16, json["readings"]!.GetValue<int>());
        Assert.Equal(60, json["hottest_c"]!.GetValue<double>());
        Assert.Equal("Bean row", json["used"]![0]!["bed"]!.GetValue<string>());
        Assert.Equal(120, json["used"]![0]!["l"]!.GetValue<double>());
        // Sixteen readings, a turn, a bed, and that it was built.
        Assert.Equal(19, json["entries"]!.AsArray().Count);
        var verdicts = json["heat"]!["rules"]!
            .AsArray()
            .ToDictionary(
                r => r!["rule"]!.GetValue<string>(),
                r => r!["verdict"]!.GetValue<string>(),
                StringComparer.Ordinal
            );
        // The same log asked of `hygiene` itself: the record only passes it on.
        Assert.Equal("met", verdicts["de_60_6d"]);
        Assert.Equal("not_applicable", verdicts["us_503_pfrp_static"]);
        Assert.True(json["diary_whole"]!.GetValue<bool>());

        var pdf = await caller.GetByteArrayAsync($"/heaps/{heapId:N}/heat.pdf", Never);
        Assert.Equal("%PDF", Encoding.ASCII.GetString(pdf, 0, 4));
    }

    [Fact]
    public async Task Record_HeapForkedIntoAnotherBay_CountsItAsATurnButNotTheUpperHalfAlone()
    {
        var bay = await site.NewBay("Next door");
        await Sent($$"""{"temperature_c":60,"spot":"core","at":"{{At(1)}}"}""");
        await Sent($$"""{"temperature_c":58,"spot":"core","at":"{{At(9)}}"}""");
        await Sent($$"""{"do":"turn","at":"{{At(4)}}"}""");
        await Sent($$"""{"do":"turn","part":"top_half","at":"{{At(6)}}"}""");
        await Sent($$"""{"do":"move","bay":"{{bay.Id:N}}","at":"{{At(8)}}"}""");
        var json = JsonNode.Parse(
            await caller.GetStringAsync($"/heaps/{heapId:N}/record.json", Never)
        )!;
        Assert.Equal(2, json["heat"]!["record"]!["turns"]!.GetValue<int>());
    }

    [Fact]
    public async Task Record_WithoutReadings_SaysThatNothingIsShown()
    {
        var page = WebUtility.HtmlDecode(
            await caller.GetStringAsync($"/heaps/{heapId:N}/record", Never)
        );
        Assert.Contains("No reading stands in the diary", page, StringComparison.Ordinal);
        Assert.Contains("No bed stands in the diary yet", page, StringComparison.Ordinal);
        Assert.Equal(
            HttpStatusCode.NotFound,
            (await caller.GetAsync($"/heaps/{heapId:N}/heat.pdf", Never)).StatusCode
        );
        Assert.Equal(
            HttpStatusCode.NotFound,
            (await caller.GetAsync($"/heaps/{Guid.NewGuid():N}/record.json", Never)).StatusCode
        );
    }

    [Fact]
    public async Task Trace_GoesFromTheMaterialToTheBedAndBack()
    {
        await Sent($$"""{"do":"spread","bed":"Rhubarb patch","l":80,"at":"{{At(90)}}"}""");
        await Sent(
            $$"""{"at":"{{At(3)}}","do":"add","ingredients":[{"name":"straw of farm Hill","amount":{"value":1,"unit":"bale"} }]}"""
        );
        foreach (var word in new[] { "rhubarb", "farm hill", "GRASS" })
        {
            var page = await caller.GetStringAsync(
                "/where?name=" + Uri.EscapeDataString(word),
                Never
            );
            Assert.Contains("Rhubarb patch", page, StringComparison.Ordinal);
            Assert.Contains("straw of farm Hill", page, StringComparison.Ordinal);
        }

        Assert.Contains(
            "Nothing found.",
            await caller.GetStringAsync("/where?name=plutonium", Never),
            StringComparison.Ordinal
        );
        var none = BatchTrace.Answer(
            await BatchTrace.Of(Desk.Reader, "plutonium", Never),
            Measures.Metric
        );
        Assert.False(none.Yes);
    }

    [Fact]
    public async Task Form_WithABed_KeepsWhatWasUsed()
    {
        var refused = await caller.Send(
            $"/heaps/{heapId:N}",
            "deed",
            ("do", "spread"),
            ("bed", ""),
            ("spread", "40")
        );
        Assert.Contains(
            "0 characters",
            await refused.Content.ReadAsStringAsync(Never),
            StringComparison.Ordinal
        );
        await caller.Send(
            $"/heaps/{heapId:N}",
            "deed",
            ("do", "spread"),
            ("bed", "Onions"),
            ("spread", "40")
        );
        var record = (await Desk.Reader.Of(heapId, null, Never))!;
        var spread = Assert.Single(
            record
                .Diary.Standing.Select(s => s.Entry)
                .OfType<EventEntry>()
                .Select(e => e.Deed)
                .OfType<SpreadDeed>()
        );
        Assert.Equal(("Onions", 40), (spread.Bed, spread.Litres));
        // The models do not know of it: nothing is taken out of a simulated heap.
        Assert.Empty(record.Question()["events"]!.AsArray());
    }

    private string At(int day) => EntryJson.Time(builtAt.AddDays(day));

    private async Task Sent(string entry)
    {
        var json = JsonNode.Parse(entry)!.AsObject();
        json["id"] = Guid.CreateVersion7().ToString();
        using var request = new HttpRequestMessage(HttpMethod.Post, $"/api/heaps/{heapId}/entries")
        {
            Content = new StringContent(json.ToJsonString(), Encoding.UTF8, "application/json"),
        };
        request.Headers.Authorization = new(
            "Bearer",
            (await Desk.Devices.Add("pole probe", Never)).Token
        );
        var answer = await caller.SendAsync(request, Never);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Never));
    }
}
