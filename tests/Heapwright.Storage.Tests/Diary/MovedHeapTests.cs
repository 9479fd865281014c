using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using static Heapwright.Storage.Tests.Diary.Entries;

namespace Heapwright.Storage.Tests.Diary;

/// <summary>A heap that was moved stands in its new bay, and its old one is free for the next.</summary>
public sealed class MovedHeapTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    private static readonly Bay There = new()
    {
        Id = Things.Id(200),
        Name = "Right bay",
        Shape = "box",
        LengthM = 1.2,
        WidthM = 1,
        HeightM = 1,
    };

    private static Guid Here => Things.Heap.BayId!.Value;

    [Fact]
    public async Task Move_LeavesTheOldBayFreeAndIsForecastInTheNew()
    {
        await using var storage = await Started();

        await storage.Entries.Record(HeapId, [Deed(1, 3, new MovedDeed(There.Id))], Never);

        var bays = await storage.Reader.InBays(storage.Clock.Now(), Never);
        Assert.Equal([There.Id], bays.Keys);
        var record = (await storage.Reader.Of(HeapId, null, Never))!;
        Assert.Equal(There.Id, record.Place.Bay);
        var move = Assert.Single(record.Question()["events"]!.AsArray())!;
        Assert.Equal("move", (string?)move["do"]);
        Assert.Equal(3, (double)move["day"]!, 1e-6);
        Assert.Equal(1.2, (double)move["bin"]!["length_m"]!, 1e-9);
        Assert.Null(move["bay"]);
    }

    [Fact]
    public async Task Move_FollowedByANewHeapInTheOldBay_KeepsBoth()
    {
        await using var storage = await Started();
        await storage.Entries.Record(HeapId, [Deed(1, 3, new MovedDeed(There.Id))], Never);
        var next = Things.Heap with
        {
            Id = Things.Id(201),
            Name = "Next",
            BuiltAt = Things.Heap.BuiltAt + NodaTime.Duration.FromDays(4),
        };
        await storage.Recorder.Put("acts.heap_started", [next.Name], [next], Never);

        var bays = await storage.Reader.InBays(storage.Clock.Now(), Never);

        Assert.Equal(HeapId, bays[There.Id].Kept.Id);
        Assert.Equal(next.Id, bays[Here].Kept.Id);
        Assert.Equal(2, (await storage.Reader.Followed(storage.Clock.Now(), Never)).Length);
    }

    [Fact]
    public async Task Move_OntoWhatStoodThere_TakesItsPlaceAndMovedBackTakesItsOwn()
    {
        await using var storage = await Started();
        var old = Things.Heap with
        {
            Id = Things.Id(202),
            Name = "Old",
            BayId = There.Id,
            BuiltAt = Things.Heap.BuiltAt - NodaTime.Duration.FromDays(90),
        };
        await storage.Recorder.Put("acts.heap_started", [old.Name], [old], Never);
        await storage.Entries.Record(HeapId, [Deed(1, 3, new MovedDeed(There.Id))], Never);
        var moved = await storage.Reader.InBays(storage.Clock.Now(), Never);

        await storage.Entries.Record(HeapId, [Deed(2, 5, new MovedDeed(Here))], Never);
        var back = await storage.Reader.InBays(storage.Clock.Now(), Never);

        Assert.Equal(HeapId, Assert.Single(moved).Value.Kept.Id);
        Assert.Equal(HeapId, back[Here].Kept.Id);
    }

    [Fact]
    public async Task Move_StruckOut_NeverWas()
    {
        await using var storage = await Started();
        await storage.Entries.Record(HeapId, [Deed(1, 3, new MovedDeed(There.Id))], Never);

        var outcome = await new CorrectEntry(storage.Diary, storage.Entries).StrikeOut(
            Id(2),
            Id(1),
            new Arrival(HeapId, EntryWay.Page, At(4), "Europe/London"),
            "wrong heap",
            Never
        );

        Assert.Equal(AppendStatus.Kept, outcome.Status);
        Assert.Equal([Here], (await storage.Reader.InBays(storage.Clock.Now(), Never)).Keys);
    }

    [Fact]
    public async Task Split_AndMerge_AreToldToTheModelOrLeaveItSilent()
    {
        await using var storage = await Started();
        await storage.Entries.Record(HeapId, [Deed(1, 3, new SplitDeed { SharePct = 40 })], Never);
        var split = (await storage.Reader.Of(HeapId, null, Never))!;
        await storage.Entries.Record(HeapId, [Deed(2, 4, new MergedDeed(null))], Never);
        var merged = (await storage.Reader.Of(HeapId, null, Never))!;

        var told = Assert.Single(split.Question()["events"]!.AsArray())!;
        Assert.Equal("split", (string?)told["do"]);
        Assert.Equal(40, (double)told["share_pct"]!);
        Assert.False(split.IsMerged);
        Assert.True(merged.IsMerged);
        var contents = await SiteContents.Read(storage.Store, Never);
        var now = Things.Heap.BuiltAt + NodaTime.Duration.FromDays(6);
        Assert.NotNull(OutlookQuestion.Of(split, contents, now, Things.Heap.TimeZone()));
        Assert.Null(OutlookQuestion.Of(merged, contents, now, Things.Heap.TimeZone()));
    }

    private static EventEntry Deed(int number, double day, HeapDeed deed) =>
        Turn(number, day) with
        {
            Deed = deed,
        };

    private static async Task<TemporaryStorage> Started()
    {
        var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put("acts.heap_started", ["June heap"], [Things.Heap, There], Never);
        return storage;
    }
}
