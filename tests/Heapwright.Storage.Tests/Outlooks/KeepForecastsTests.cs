using Heapwright.App.Outlooks;
using Heapwright.App.Sites;
using static Heapwright.Storage.Tests.Diary.Entries;

namespace Heapwright.Storage.Tests.Outlooks;

public sealed class KeepForecastsTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    [Fact]
    public async Task Refresh_NewEntries_KeepsAForecastForEachStateOfTheDiary()
    {
        await using var storage = await Started();
        var keep = Keeping(storage);
        await storage.Entries.Record(HeapId, [Read(1, 1, 45), Read(2, 3, 58)], Never);

        Assert.Equal(1, await keep.Refresh(Never));
        Assert.Equal(0, await keep.Refresh(Never));
        await storage.Entries.Record(HeapId, [Read(3, 5, 61)], Never);
        Assert.Equal(1, await keep.Refresh(Never));

        var kept = await storage.Forecasts.Of(HeapId, Never);
        Assert.Equal([2, 3], kept.Select(k => k.Entries));
        Assert.Equal([2, 3], kept.Select(k => k.ReadingsUsed));
        Assert.All(kept, k => Assert.True(k.Course.Length > 10));
        Assert.All(
            kept.SelectMany(k => k.Course),
            c => Assert.True(c.P05 <= c.P25 && c.P25 <= c.P50 && c.P50 <= c.P75 && c.P75 <= c.P95)
        );
        Assert.Equal(61, kept[1].Latest!.Celsius, 6);
        Assert.Equal(kept[1].Id, (await storage.Forecasts.Latest(Never))[HeapId].Id);
    }

    [Fact]
    public async Task Refresh_HoursLater_TakesThePlaceOfTheForecastOfTheSameEntries()
    {
        await using var storage = await Started();
        var keep = Keeping(storage);
        await storage.Entries.Record(HeapId, [Read(1, 1, 45)], Never);
        await keep.Refresh(Never);

        storage.Clock.Advance(TimeSpan.FromHours(4));
        Assert.Equal(1, await keep.Refresh(Never));
        var kept = Assert.Single(await storage.Forecasts.Of(HeapId, Never));
        Assert.Equal(7, kept.FromDay);

        storage.Clock.Advance(TimeSpan.FromDays(2));
        await keep.Refresh(Never);
        Assert.Equal([7, 9], (await storage.Forecasts.Of(HeapId, Never)).Select(k => k.FromDay));
    }

    [Fact]
    public async Task Refresh_MonthlyMeansTyped_ForecastsAnewAtOnce()
    {
        await using var storage = await Started();
        var keep = Keeping(storage);
        await storage.Entries.Record(HeapId, [Read(1, 1, 45)], Never);
        await keep.Refresh(Never);
        var site = (await storage.Store.Find<Site>(Site.OnlyId, Never))!;
        var air = new MonthlyAir { MeansC = [.. Enumerable.Repeat(2.0, 12)] };
        Assert.NotEqual(air, site.Air);

        await new KeepSite(storage.Recorder).Change(site with { Air = air }, Never);

        Assert.Equal(1, await keep.Refresh(Never));
        Assert.Equal(0, await keep.Refresh(Never));
    }

    [Fact]
    public async Task Refresh_AfterAStart_MakesNothingAnewThatIsKept()
    {
        await using var storage = await Started();
        await storage.Entries.Record(HeapId, [Read(1, 1, 45)], Never);
        await Keeping(storage).Refresh(Never);

        Assert.Equal(0, await Keeping(storage).Refresh(Never));
    }

    [Fact]
    public async Task Refresh_WithoutASite_DoesNothing()
    {
        await using var storage = await TemporaryStorage.Ready();

        Assert.Equal(0, await Keeping(storage).Refresh(Never));
    }

    [Fact]
    public async Task InOrder_HeapInABay_AsksForWhatItsForecastSays()
    {
        await using var storage = await Started();
        await storage.Entries.Record(HeapId, [Read(1, 3, 50), Read(2, 6.5, 58)], Never);
        var follow = new FollowHeaps(
            storage.Store,
            storage.Reader,
            storage.Forecasts,
            storage.Clock
        );

        Assert.Equal(HeapStepKind.Thinking, Assert.Single(await follow.InOrder(Never)).Step.Kind);
        await Keeping(storage).Refresh(Never);
        var heap = Assert.Single(await follow.InOrder(Never));

        Assert.True(heap.Step.Kind is HeapStepKind.Leave or HeapStepKind.Do);
        Assert.Equal(2, heap.Step.Forecast!.ReadingsUsed);
        Assert.Equal(58, heap.Step.LastReading!.Temperature.DegreesCelsius, 6);
        Assert.Equal(Things.Heap.BayId, heap.Bay!.Id);

        storage.Clock.Advance(TimeSpan.FromDays(2));
        var later = Assert.Single(await follow.InOrder(Never));
        Assert.Equal((HeapStepKind.Read, true), (later.Step.Kind, later.Step.IsDue));
    }

    private static KeepForecasts Keeping(TemporaryStorage storage) =>
        new(storage.Reader, storage.Store, storage.Forecasts, storage.Clock);

    private static async Task<TemporaryStorage> Started()
    {
        var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put(
            "acts.site_started",
            [],
            [Things.Site, Things.Heap, .. Things.All.OfType<App.Sites.Bay>()],
            Never
        );
        return storage;
    }
}
