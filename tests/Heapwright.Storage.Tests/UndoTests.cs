using Heapwright.App.Batches;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Core.Readings;

namespace Heapwright.Storage.Tests;

public sealed class UndoTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    [Fact]
    public async Task Undo_LastCount_PutsTheAmountBackByANewAct()
    {
        await using var storage = await TemporaryStorage.Ready();
        var stock = new KeepStock(storage.Recorder);
        await stock.Add(Things.Grass, Never);
        var counted = await stock.SetAmount(Things.Grass.Id, 4, Never);

        var undone = await storage.Recorder.Undo(counted.Act!.Number, Never);

        Assert.True(undone.IsDone);
        Assert.Equal(3, (await storage.Store.All<StockEntry>(Never)).Single().Amount);
        var record = await storage.Store.Latest(10, Never);
        Assert.Equal(
            ["acts.undone", "acts.stock_counted", "acts.stock_added"],
            record.Select(a => a.Act.What)
        );
        Assert.True(record[1].WasUndone);
        Assert.False(record[1].CanBeUndone);
        Assert.True(record[0].CanBeUndone);
    }

    [Fact]
    public async Task Undo_ChangedAgainSince_IsRefusedAndChangesNothing()
    {
        await using var storage = await TemporaryStorage.Ready();
        var stock = new KeepStock(storage.Recorder);
        await stock.Add(Things.Grass, Never);
        var first = await stock.SetAmount(Things.Grass.Id, 4, Never);
        await stock.SetAmount(Things.Grass.Id, 5, Never);

        var refused = await storage.Recorder.Undo(first.Act!.Number, Never);

        Assert.Equal("sites.act_superseded", refused.Refusals.Single().Why.Code);
        Assert.Equal(5, (await storage.Store.All<StockEntry>(Never)).Single().Amount);
        Assert.False(
            (await storage.Store.Latest(10, Never))
                .Single(a => a.Act.Number == first.Act.Number)
                .CanBeUndone
        );
    }

    [Fact]
    public async Task Undo_TakenOutEntry_BringsItBackWithAllItsFields()
    {
        await using var storage = await TemporaryStorage.Ready();
        var stock = new KeepStock(storage.Recorder);
        await stock.Add(Things.Grass, Never);
        var removed = await stock.Remove(Things.Grass, Never);

        await storage.Recorder.Undo(removed.Act!.Number, Never);

        Assert.Equal(
            ItemKinds.Write(Things.Grass),
            ItemKinds.Write((await storage.Store.All<StockEntry>(Never)).Single())
        );
    }

    [Fact]
    public async Task Undo_SampleTakenOut_BringsTheWholeGardenBack()
    {
        await using var storage = await TemporaryStorage.Ready();
        var sample = new SampleGarden(storage.Recorder, storage.Entries);
        await sample.BringIn("Europe/London", DisplayUnits.Metric, Never);
        await new KeepStock(storage.Recorder).Add(Things.Grass, Never);

        var gone = await sample.TakeOut(Never);

        Assert.Null(await storage.Store.Find<Site>(Site.OnlyId, Never));
        Assert.Equal("Lawn mowings", (await storage.Store.All<StockEntry>(Never)).Single().Name);
        await storage.Recorder.Undo(gone.Act!.Number, Never);
        Assert.Equal(3, (await storage.Store.All<Bay>(Never)).Length);
        Assert.Equal(6, (await storage.Store.All<StockEntry>(Never)).Length);
    }

    [Fact]
    public async Task SampleGarden_BroughtIn_NamesMaterialsOfTheLibrary()
    {
        await using var storage = await TemporaryStorage.Ready();

        await new SampleGarden(storage.Recorder, storage.Entries).BringIn(
            "Europe/London",
            DisplayUnits.Metric,
            Never
        );

        var contents = await SiteContents.Read(storage.Store, Never);
        Assert.All(contents.Stock, s => Assert.NotNull(contents.Material(s.Material)));
        Assert.All(contents.Stock, s => Assert.NotNull(contents.Containers.Find(s.Unit)));
        Assert.All(contents.Bays, b => Assert.Empty(b.Faults()));
    }

    [Fact]
    public async Task Change_SentTwice_IsWrittenOnce()
    {
        await using var storage = await TemporaryStorage.Ready();
        var stock = new KeepStock(storage.Recorder);
        await stock.Add(Things.Grass, Never);

        await stock.SetAmount(Things.Grass.Id, 4, Never);
        var again = await stock.SetAmount(Things.Grass.Id, 4, Never);

        Assert.Null(again.Act);
        Assert.True(again.IsDone);
        Assert.Equal(2, (await storage.Store.Latest(10, Never)).Length);
    }

    [Fact]
    public async Task Amount_BelowZero_IsRefusedWithTheRange()
    {
        await using var storage = await TemporaryStorage.Ready();
        var stock = new KeepStock(storage.Recorder);
        await stock.Add(Things.Grass, Never);

        var refused = await stock.SetAmount(Things.Grass.Id, -1, Never);

        Assert.Equal("amount", refused.Refusals.Single().Field);
        Assert.Equal(3, (await storage.Store.All<StockEntry>(Never)).Single().Amount);
    }

    [Fact]
    public async Task SampleGarden_BroughtIn_HoldsABatchCarriedFromTheStockToTheBeds()
    {
        await using var storage = await TemporaryStorage.Ready();
        await new SampleGarden(storage.Recorder, storage.Entries).BringIn(
            "Europe/London",
            DisplayUnits.Metric,
            Never
        );

        var heaps = await storage.Store.All<KeptHeap>(Never);
        var now = storage.Recorder.Clock.Now();
        Assert.Equal(2, heaps.Length);
        foreach (var heap in heaps)
        {
            Assert.Empty(heap.Faults());
            var record = (await storage.Reader.Of(heap.Id, null, Never))!;
            // A reading that is doubted would be a fault of the data.
            Assert.All(
                record.Verdicts.Values,
                v => Assert.Equal(PlausibilityStatus.Plausible, v.Status)
            );
            Assert.All(record.Entries, e => Assert.True(e.Entry.At <= now.ToDateTimeOffset()));
            Assert.True((await storage.Reader.Verify(heap.Id, Never)).IsWhole);
        }

        var done = (await storage.Reader.Of(heaps[0].Id, null, Never))!;
        var batch = BatchRecord.Of(
            done,
            await storage.Reader.Verify(done.Kept.Id, Never),
            now,
            Measures.Metric
        );
        Assert.Equal("mature", batch.Finish()!.Json["stage"]!.GetValue<string>());
        Assert.Equal(2, batch.Uses.Length);
        var where = Assert.Single(await BatchTrace.Of(storage.Reader, "pear trees", Never));
        Assert.Contains(where.Loads, l => l.Giver.Length > 0);
        Assert.Equal(2, (await BatchTrace.Of(storage.Reader, "nether fold", Never)).Length);
    }

    [Fact]
    public async Task Heap_StartedFromTheStock_TakesWhatWentInAndUndoBringsItBack()
    {
        await using var storage = await TemporaryStorage.Ready();
        await new SampleGarden(storage.Recorder, storage.Entries).BringIn(
            "Europe/London",
            DisplayUnits.Metric,
            Never
        );
        var sample = (await storage.Store.All<KeptHeap>(Never))[1];
        var heap = sample with { Id = Guid.CreateVersion7(), Name = "Next" };

        var outcome = await new StartHeap(storage.Recorder, storage.Entries).Start(
            heap,
            EntryWay.Page,
            Never,
            takesStock: true
        );

        // Of 3 barrows of grass 3 went in, of 6 of leaves 6, of 4 of manure 3; only 2 of 4 barrows of chips were there.
        double[] left = [0, 0, 0, 0, 1];
        Assert.Equal(left, Amounts(await storage.Store.All<StockEntry>(Never)));
        await storage.Recorder.Undo(outcome.Act!.Number, Never);
        double[] before = [3, 6, 2, 3, 4];
        Assert.Equal(before, Amounts(await storage.Store.All<StockEntry>(Never)));
        Assert.Null(await storage.Store.Find<KeptHeap>(heap.Id, Never));
    }

    private static double[] Amounts(IEnumerable<StockEntry> stock) =>
        [.. stock.Select(s => s.Amount)];
}
