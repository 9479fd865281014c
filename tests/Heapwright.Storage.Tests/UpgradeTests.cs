using System.Globalization;
using Heapwright.App.Diary;
using Heapwright.App.Links;
using Heapwright.App.Sites;
using Heapwright.Core.Forecasts;
using Heapwright.Storage.Sqlite;
using NodaTime;

namespace Heapwright.Storage.Tests;

public sealed class UpgradeTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    public static TheoryData<int> ReleasedSchemas => [.. Enumerable.Range(1, SiteContext.Schema)];

    [Theory]
    [MemberData(nameof(ReleasedSchemas))]
    public async Task Upgrade_FromReleasedSchema_KeepsEverythingAndEndsAtTheNewest(int schema)
    {
        await using var storage = new TemporaryStorage();
        await storage.Sql(
            await File.ReadAllTextAsync(
                Path.Combine(
                    AppContext.BaseDirectory,
                    "Fixtures",
                    string.Create(CultureInfo.InvariantCulture, $"schema-{schema}.sql")
                ),
                Never
            )
        );

        await storage.File.BringUpToDate(Never);

        Assert.Equal(["9"], await storage.Sql("select max(number) from schema_number"));
        Assert.Equal(["ok"], await storage.File.IntegrityCheck(Never));
        var site = await storage.Store.Find<Site>(Site.OnlyId, Never);
        Assert.Equal("Fixture Garden", site!.Name);
        Assert.Equal("Europe/London", site.Zone);
        Assert.Equal(schema >= 7 ? 6.5 : null, site.Air?.MeansC[2]);
        Assert.Equal(schema >= 7 ? 4 : null, site.Air?.SwingK);
        var stock = (await storage.Store.All<StockEntry>(Never)).Single();
        Assert.Equal(2.5, stock.Amount);
        Assert.Equal("wheelbarrow", stock.Unit);
        Assert.Equal(new LocalDate(2026, 3, 28), stock.Since);
        Assert.Equal("acts.stock_added", (await storage.Store.Latest(5, Never))[0].Act.What);
        Assert.True((await storage.Recorder.Undo(1, Never)).IsDone);
        Assert.Empty(await storage.Store.All<StockEntry>(Never));
        if (schema >= 3)
        {
            var heap = (await storage.Store.All<KeptHeap>(Never)).Single();
            Assert.Equal("Spring heap", heap.Name);
            var record = await storage.Reader.Of(heap.Id, null, Never);
            Assert.Equal(2, record!.Diary.Standing.Count);
            Assert.True((await storage.Reader.Verify(heap.Id, Never)).IsWhole);
        }

        var lessons = await storage.Store.All<KeptLesson>(Never);
        Assert.Equal(schema >= 4 ? 1 : 0, lessons.Length);
        if (schema >= 4)
        {
            Assert.Equal(0.8, lessons[0].Parameters["fast_rate"].Mean);
            Assert.True(lessons[0].IsUsed);
        }

        var links = await storage.Links.All(Never);
        Assert.Equal(schema >= 6 ? 1 : 0, links.Length);
        if (schema >= 6)
        {
            Assert.Equal(LinkPurpose.Share, links[0].Purpose);
            Assert.Equal(Instant.FromUtc(2026, 5, 20, 10, 0), links[0].ExpiresAt);
            Assert.Equal("garden@example.org", await storage.Settings.Find("mail.address", Never));
        }

        var devices = await storage.Devices.All(Never);
        Assert.Equal(schema >= 9 ? 1 : 0, devices.Length);
        if (schema >= 9)
        {
            Assert.Equal(("Robin", DeviceRole.Coordinator), (devices[0].Name, devices[0].Role));
            Assert.Equal(Instant.FromUtc(2026, 4, 20, 23, 0), devices[0].Until);
        }

        var forecasts = await storage.Forecasts.Latest(Never);
        Assert.Equal(schema >= 5 ? 1 : 0, forecasts.Count);
        if (schema >= 5)
        {
            var kept = forecasts.Values.Single();
            Assert.Equal(("turn", 5.0, 20.0), (kept.Step.Deed, kept.Step.OnDay, kept.Step.Litres));
            Assert.Equal([StaleReason.OldReadings], kept.Stale);
            Assert.Equal(47.5, kept.At(9)!.P50);
        }
    }

    [Fact]
    public async Task Upgrade_FromOlderSchema_TakesACopyFirst()
    {
        await using var storage = new TemporaryStorage();
        await storage.Sql(
            await File.ReadAllTextAsync(
                Path.Combine(AppContext.BaseDirectory, "Fixtures", "schema-1.sql"),
                Never
            )
        );

        var copy = await storage.File.BringUpToDate(Never);

        Assert.Equal("heapwright-schema1-20260601T120000Z.db", Path.GetFileName(copy));
        File.Copy(copy!, storage.FileName, overwrite: true);
        File.Delete(storage.FileName + "-wal");
        File.Delete(storage.FileName + "-shm");
        Assert.Equal(["1"], await storage.Sql("select max(number) from schema_number"));
        Assert.Equal(["Fixture Garden"], await storage.Sql("select name from site"));
    }

    [Fact]
    public async Task Open_FileOfANewerVersion_IsRefusedAndLeftAlone()
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Sql("insert into schema_number values (99, 'from the future')");

        var refusal = await Assert.ThrowsAsync<NewerSchemaException>(() =>
            storage.File.BringUpToDate(Never)
        );

        Assert.Contains("schema 99", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(["99"], await storage.Sql("select max(number) from schema_number"));
    }

    [Fact]
    public async Task Open_NewFolder_MakesTheFileWithoutACopy()
    {
        await using var storage = new TemporaryStorage();

        Assert.Null(await storage.File.BringUpToDate(Never));
        Assert.Null(await storage.File.BringUpToDate(Never));

        Assert.Equal(["ok"], await storage.File.IntegrityCheck(Never));
        Assert.False(Directory.Exists(storage.File.BackupFolder));
    }

    [Fact]
    public async Task IntegrityCheck_DamagedFile_IsNotOk()
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put("acts.imported", ["9"], Things.All, Never);
        await storage.Sql("pragma wal_checkpoint(truncate)");
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        await using (var file = File.OpenWrite(storage.FileName))
        {
            // From the third page on, whatever it held is gone.
            file.Position = 2 * 4096;
            await file.WriteAsync(Enumerable.Repeat((byte)0xA5, 6 * 4096).ToArray(), Never);
        }

        Assert.NotEqual(["ok"], await storage.File.IntegrityCheck(Never));
    }

    [Fact]
    public void Fixtures_ThereIsOneForEverySchema()
    {
        var fixtures = Directory
            .GetFiles(Path.Combine(AppContext.BaseDirectory, "Fixtures"), "schema-*.sql")
            .Select(f => Path.GetFileNameWithoutExtension(f)["schema-".Length..])
            .Order(StringComparer.Ordinal);

        Assert.Equal(
            Enumerable
                .Range(1, SiteContext.Schema)
                .Select(n => n.ToString(CultureInfo.InvariantCulture)),
            fixtures
        );
    }
}
