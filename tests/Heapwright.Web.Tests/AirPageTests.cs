using System.Net;
using Heapwright.App.Diary;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Microsoft.Extensions.DependencyInjection;

namespace Heapwright.Web.Tests;

/// <summary>The monthly means of a garden, typed on their page, and what the page of a heap says of them.</summary>
public sealed class AirPageTests : IAsyncLifetime
{
    private static readonly CancellationToken Never = CancellationToken.None;
    private readonly SiteUnderTest site = new();
    private HttpClient caller = null!;

    public async ValueTask InitializeAsync()
    {
        caller = site.Caller();
        await caller.OwnSite();
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    [Fact]
    public async Task Means_Typed_AreKeptShownAndTakenBack()
    {
        var kept = await caller.Send(
            "/settings/air",
            "air",
            [.. Months("6.5"), ("air_swing", "9")]
        );

        Assert.Equal(HttpStatusCode.Found, kept.StatusCode);
        var air = (await Site())!.Air;
        Assert.Equal(Enumerable.Repeat(6.5, 12), air!.MeansC);
        Assert.Equal(4.5, air.SwingK);
        var html = await caller.GetStringAsync("/settings/air", Never);
        Assert.Contains(
            "name=\"air_12\" type=\"text\" value=\"6.5\"",
            html,
            StringComparison.Ordinal
        );

        await caller.Send("/settings/air", "air", [.. Months(""), ("air_swing", "")]);
        Assert.Null((await Site())!.Air);
    }

    [Theory]
    [InlineData("air_3", "", "11 of the 12 monthly means are there; give all twelve or none.")]
    [InlineData("air_3", "warm", "is not a number")]
    [InlineData("air_3", "55", "55 is out of range; -40 to 40 °C is allowed.")]
    [InlineData("air_swing", "-1", "-1 is out of range; 0 to 30 °C is allowed.")]
    public async Task Means_Bad_AreRefusedAndChangeNothing(string field, string typed, string said)
    {
        await caller.Send("/settings/air", "air", [.. Months("6.5"), ("air_swing", "9")]);
        var before = (await Site())!.Air;

        var answer = await caller.Send(
            "/settings/air",
            "air",
            [
                .. Months("8")
                    .Append(("air_swing", "10"))
                    .Select(f => f.Item1 == field ? (field, typed) : f),
            ]
        );

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var html = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Never));
        Assert.Contains(said, html, StringComparison.Ordinal);
        Assert.Equal(before, (await Site())!.Air);
    }

    [Fact]
    public async Task Means_TypedInGermanAndFahrenheit_AreReadSo()
    {
        await caller.GetAsync("/language?set=de&back=%2F", Never);
        await caller.GetAsync("/format?set=de-DE&back=%2F", Never);
        var store = site.Services.GetRequiredService<IItemStore>();
        var own = (await Site())!;
        await site
            .Services.GetRequiredService<KeepSite>()
            .Change(own with { Units = own.Units with { Temperature = "f" } }, Never);

        await caller.Send("/settings/air", "air", [.. Months("50,9"), ("air_swing", "18")]);

        var air = (await store.Find<Site>(App.Sites.Site.OnlyId, Never))!.Air!;
        // (50.9 − 32) / 1.8 = 10.5; 18 °F of difference are 10 K, half of which is 5 K.
        Assert.All(air.MeansC, m => Assert.Equal(10.5, m, 1e-9));
        Assert.Equal(5, air.SwingK!.Value, 1e-9);
        var html = WebUtility.HtmlDecode(await caller.GetStringAsync("/settings/air", Never));
        Assert.Contains("Januar", html, StringComparison.Ordinal);
        Assert.Contains("value=\"50,9\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task HeapPage_SaysWhereTheAirComesFrom()
    {
        var heap = HeapPageTests.Heap(Guid.CreateVersion7());
        var desk = site.Services.GetRequiredService<DiaryDesk>();
        Assert.True((await desk.Start.Start(heap, EntryWay.Cli, Never)).IsDone);
        var url = $"/heaps/{heap.Id:N}";

        var assumed = WebUtility.HtmlDecode(await caller.GetStringAsync(url, Never));
        await caller.Send("/settings/air", "air", [.. Months("6.5"), ("air_swing", "")]);
        var known = WebUtility.HtmlDecode(await caller.GetStringAsync(url, Never));

        Assert.Contains("The air temperature is assumed: 15", assumed, StringComparison.Ordinal);
        Assert.Contains(
            "The air temperature comes from the monthly means of this garden.",
            known,
            StringComparison.Ordinal
        );
    }

    private static IEnumerable<(string, string)> Months(string typed) =>
        Enumerable.Range(1, 12).Select(m => (MonthlyAir.Field(m), typed));

    private Task<Site?> Site() =>
        site.Services.GetRequiredService<IItemStore>().Find<Site>(App.Sites.Site.OnlyId, Never);
}
