using Heapwright.App.Changes;
using Heapwright.App.Sites;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace Heapwright.Storage.Tests.Stores;

public sealed class EfItemStoreTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    [Fact]
    public async Task Store_EveryKindOfThing_ComesBackAsItWas()
    {
        await using var storage = await TemporaryStorage.Ready();

        await storage.Recorder.Put("acts.imported", ["10"], Things.All, Never);

        Assert.Equal(10, Things.All.Length);
        Assert.Equal(
            ItemKinds.All.Order(StringComparer.Ordinal),
            Things.All.Select(ItemKinds.Of).Order(StringComparer.Ordinal)
        );
        foreach (var item in Things.All)
        {
            Assert.Equal(
                ItemKinds.Write(item),
                await storage.Store.Current(ItemKinds.Of(item), item.Id, Never)
            );
        }
    }

    [Fact]
    public async Task Store_ThingChangedMeanwhile_RefusesAndWritesNothing()
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put("acts.stock_added", [], [Things.Grass], Never);
        var stale = new Act
        {
            At = Instant.FromUtc(2026, 6, 1, 12, 0),
            What = "acts.stock_counted",
            Changes =
            [
                new Change("bay", Things.Id(3), null, ItemKinds.Write(Things.All[2])),
                new Change(
                    "stock",
                    Things.Grass.Id,
                    ItemKinds.Write(Things.Grass with { Amount = 99 }),
                    ItemKinds.Write(Things.Grass with { Amount = 100 })
                ),
            ],
        };

        await Assert.ThrowsAsync<ConflictException>(() => storage.Store.Write(stale, Never));

        Assert.Empty(await storage.Store.All<Bay>(Never));
        Assert.Equal(3, (await storage.Store.All<StockEntry>(Never)).Single().Amount);
        Assert.Single(await storage.Store.Latest(10, Never));
    }

    [Fact]
    public async Task Store_ThingTakenOut_KeepsItsRow()
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put("acts.stock_added", [], [Things.Grass], Never);

        await storage.Recorder.Remove("acts.stock_removed", [], [Things.Grass], Never);

        Assert.Empty(await storage.Store.All<StockEntry>(Never));
        Assert.Equal(["1"], await storage.Sql("select is_removed from stock_entry"));
    }

    [Theory]
    [InlineData("update act set what = 'x'")]
    [InlineData("delete from act")]
    [InlineData("update act_change set after_json = null")]
    [InlineData("delete from act_change")]
    public async Task Record_ChangedPastTheProgram_IsRefusedByTheFile(string sql)
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put("acts.stock_added", [], [Things.Grass], Never);

        var refusal = await Assert.ThrowsAsync<SqliteException>(() => storage.Sql(sql));

        Assert.Contains("added to, never changed", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Connection_Opened_WritesAheadAndSynchronisesFully()
    {
        await using var storage = await TemporaryStorage.Ready();

        Assert.Equal(["wal"], await storage.Sql("pragma journal_mode"));
        // 2 is FULL in SQLite's own numbers.
        Assert.Equal(2, await storage.File.Pragma("synchronous", Never));
    }
}
