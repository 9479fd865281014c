using Heapwright.App.Diary;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using static Heapwright.Storage.Tests.Diary.Entries;

namespace Heapwright.Storage.Tests.Diary;

public sealed class RecordEntriesTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    [Fact]
    public async Task Reading_InTheWrongUnit_IsKeptWithItsQuestion()
    {
        await using var storage = await Started();

        var outcome = Assert.Single(await storage.Entries.Record(HeapId, [Read(1, 2, 140)], Never));

        Assert.Equal(AppendStatus.Kept, outcome.Status);
        Assert.Equal(PlausibilityStatus.Asks, outcome.Verdict!.Status);
        var record = await storage.Reader.Of(HeapId, null, Never);
        Assert.Equal(60, record!.Verdicts[Id(1)].Suggested!.Value.DegreesCelsius, 6);
        Assert.False(record.Believed(Id(1)));
        Assert.NotEmpty(App.Texts.Words.Of(record.Verdicts[Id(1)].Reasons[0]));
    }

    [Fact]
    public async Task Reading_AfterAJumpInTheSameCall_IsDoubtedUnlessTurned()
    {
        await using var storage = await Started();

        var outcomes = await storage.Entries.Record(
            HeapId,
            [Read(2, 3.1, 25), Read(1, 3, 60), Read(5, 5.1, 25), Turn(4, 5.05), Read(3, 5, 60)],
            Never
        );

        Assert.Equal(
            [
                PlausibilityStatus.Doubtful,
                PlausibilityStatus.Plausible,
                PlausibilityStatus.Plausible,
                null,
                PlausibilityStatus.Plausible,
            ],
            outcomes.Select(o => o.Verdict?.Status)
        );
    }

    [Fact]
    public async Task Reading_HeldAgainstWhatIsKept_CorrectionsIncluded()
    {
        await using var storage = await Started();
        await storage.Entries.Record(HeapId, [Read(1, 3, 30)], Never);
        var corrected = new CorrectionEntry
        {
            Id = Id(2),
            HeapId = HeapId,
            At = At(3.05),
            ReceivedAt = At(3.05),
            Way = EntryWay.Page,
            Corrects = Id(1),
            Replacement = Read(1, 3, 58) with { Id = Id(2) },
        };
        await storage.Entries.Record(HeapId, [corrected], Never);

        var outcome = await storage.Entries.Record(HeapId, [Read(3, 3.1, 59)], Never);

        Assert.Equal(PlausibilityStatus.Plausible, outcome.Single().Verdict!.Status);
    }

    [Fact]
    public async Task Reading_AfterOneThatIsNotBelieved_IsHeldAgainstTheOneBefore()
    {
        await using var storage = await Started();
        await storage.Entries.Record(HeapId, [Read(1, 3, 61), Read(2, 3.5, 140)], Never);

        var outcome = await storage.Entries.Record(HeapId, [Read(3, 4, 62)], Never);
        var cold = await storage.Entries.Record(HeapId, [Read(4, 4, -40)], Never);

        Assert.Equal(PlausibilityStatus.Plausible, outcome.Single().Verdict!.Status);
        Assert.Equal(AppendStatus.Kept, cold.Single().Status);
        Assert.False((await storage.Reader.Of(HeapId, null, Never))!.Believed(Id(4)));
    }

    [Theory]
    [InlineData(60.0, PlausibilityStatus.Plausible)]
    [InlineData(25.0, PlausibilityStatus.Doubtful)]
    [InlineData(null, PlausibilityStatus.Plausible)]
    public async Task Reading_KeptBeforeItsNeighbourWasCorrected_IsJudgedAgainstWhatStands(
        double? corrected,
        PlausibilityStatus status
    )
    {
        await using var storage = await Started();
        await storage.Entries.Record(HeapId, [Read(1, 3, 99), Read(2, 3.1, 62)], Never);
        var correction = new CorrectionEntry
        {
            Id = Id(3),
            HeapId = HeapId,
            At = At(5),
            ReceivedAt = At(5),
            Way = EntryWay.Page,
            Corrects = Id(1),
            Replacement = corrected is { } celsius ? Read(3, 3, celsius) : null,
        };

        await storage.Entries.Record(HeapId, [correction], Never);

        var record = await storage.Reader.Of(HeapId, null, Never);
        Assert.Equal(status, record!.Verdicts[Id(2)].Status);
        Assert.All(
            record.Verdicts[Id(2)].Reasons,
            r => Assert.DoesNotContain("99", App.Texts.Words.Of(r), StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task Water_MoreThanTheHeapCouldHold_IsRefusedAndNothingIsKept()
    {
        await using var storage = await Started();
        EventEntry Water(int number, double litres) =>
            Turn(number, 3) with
            {
                Deed = new WateredDeed { Litres = litres },
            };
        CorrectionEntry correction = new()
        {
            Id = Id(3),
            HeapId = HeapId,
            At = At(4),
            ReceivedAt = At(4),
            Way = EntryWay.Page,
            Corrects = Id(2),
            Replacement = Water(3, 99999),
        };

        var outcomes = await storage.Entries.Record(
            HeapId,
            [Water(1, 99999), Water(2, 200), correction],
            Never
        );

        Assert.Equal(
            ["readings.water_too_much", null, "readings.water_too_much"],
            outcomes.Select(o => o.Why?.Code)
        );
        Assert.Contains(
            "more than this heap could hold",
            App.Texts.Words.Of(outcomes[0].Why!),
            StringComparison.Ordinal
        );
        Assert.Equal(["1"], await storage.Sql("select count(*) from diary_entry"));
    }

    [Fact]
    public async Task Entry_OfNoHeapOrNoTime_IsRefusedWithItsReason()
    {
        await using var storage = await Started();

        var noHeap = await storage.Entries.Record(Things.Id(77), [Read(1, 1, 50)], Never);
        var noTime = await storage.Entries.Record(
            HeapId,
            [
                Read(2, 1, 50) with
                {
                    At = default,
                },
                Read(3, 9, 50) with
                {
                    ReceivedAt = At(1),
                },
                Read(4, 1, 50) with
                {
                    HeapId = Things.Id(77),
                },
                Read(5, 1, 50),
            ],
            Never
        );

        Assert.Equal("readings.heap_unknown", noHeap.Single().Why!.Code);
        Assert.Equal(
            ["readings.time_range", "readings.time_range", "readings.other_heap", null],
            noTime.Select(o => o.Why?.Code)
        );
        Assert.Equal(["1"], await storage.Sql("select count(*) from diary_entry"));
    }

    [Fact]
    public async Task Photo_WithoutItsImage_IsRefusedAndWithItIsKept()
    {
        await using var storage = await Started();
        var photo = new Photo(new string('a', 64), "image/png", new byte[] { 1, 2, 3 });
        var entry = new PhotoEntry
        {
            Id = Id(1),
            HeapId = HeapId,
            At = At(1),
            ReceivedAt = At(1),
            Way = EntryWay.Page,
            ContentHash = photo.ContentHash,
        };

        var before = await storage.Entries.Record(HeapId, [entry], Never);
        await storage.Photos.Keep(photo, Never);
        await storage.Photos.Keep(photo, Never);
        var after = await storage.Entries.Record(HeapId, [entry], Never);

        Assert.Equal("readings.photo_missing", before.Single().Why!.Code);
        Assert.Equal(AppendStatus.Kept, after.Single().Status);
        Assert.Equal(
            [1, 2, 3],
            (await storage.Photos.Find(photo.ContentHash, Never))!.Bytes.ToArray()
        );
    }

    [Fact]
    public async Task Question_OfAHeap_HoldsEventsAndBelievedReadings()
    {
        await using var storage = await Started();
        await storage.Entries.Record(
            HeapId,
            [Read(1, 1, 44), Read(2, 2, 140), Turn(3, 4), Read(4, 4.5, 50)],
            Never
        );

        var question = (await storage.Reader.Of(HeapId, null, Never))!.Question();

        Assert.Equal(
            """[{"day":1,"temperature_c":44,"spot":"core","depth_cm":45},{"day":4.5,"temperature_c":50,"spot":"core","depth_cm":45}]""",
            question["readings"]!.ToJsonString()
        );
        Assert.Equal(
            """[{"day":4,"do":"turn","thoroughness":"good","part":"outside_in"}]""",
            question["events"]!.ToJsonString()
        );
        Assert.Equal("2026-05-25T16:00:00+01:00", question["start"]!.GetValue<string>());
    }

    [Fact]
    public void Heap_AsItIsKept_IsReadForTheModels()
    {
        var heap = App.Contract.HeapReader.Read(Things.Heap);

        Assert.Equal(2, heap.Ingredients.Count);
        Assert.Equal(20, heap.WaterLitres.Typical);
        Assert.Equal(1.2, heap.Bin.Length.Meters);
        Assert.Equal(TimeSpan.FromHours(1), heap.BuiltAt.Offset);
        Assert.Equal(2, heap.DayOf(At(2)), 9);
    }

    private static async Task<TemporaryStorage> Started()
    {
        var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put("acts.heap_started", ["June heap"], [Things.Heap], Never);
        return storage;
    }
}
