using System.Globalization;
using System.Text;
using Heapwright.App.Backups;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Storage.Tests.Diary;
using Microsoft.Data.Sqlite;

namespace Heapwright.Storage.Tests.Backups;

public sealed class SqliteBackupsTests
{
    private const string Key = "key-0198f3a0-7c1e-7b60-9d2e-3f1f6f0a4c11.xml";
    private static readonly CancellationToken Never = CancellationToken.None;

    public static TheoryData<int> ReleasedSchemas => [.. Enumerable.Range(1, SiteContext.Schema)];

    [Fact]
    public async Task Restore_OfABackup_BringsEverythingBackAsItWas()
    {
        await using var storage = await Filled();
        var before = await Content(storage);
        var backup = (await storage.Backups.Make(BackupKind.Asked, Never)).Backup!;
        Assert.Equal("heapwright-20260601T120000Z-asked.zip", backup.Name);
        await ChangeMuch(storage);
        Assert.NotEqual(before, await Content(storage));

        await using var zip = storage.Backups.Open(backup.Name)!;
        var look = await storage.Backups.Look(zip, backup.Name, Never);
        var restored = await storage.Backups.Restore(zip, backup.Name, look.Sha256, Never);

        Assert.Null(look.Refusal);
        Assert.Equal(new BackupCounts(1, 3, 1, 1), look.Holds);
        Assert.Equal(new BackupCounts(0, 1, 1, 0), look.Lost);
        Assert.Equal(2, look.ChangesLost);
        Assert.Null(restored.Refusal);
        Assert.Equal(BackupKind.BeforeRestore, restored.Backup!.Kind);
        Assert.Equal(before, await Content(storage));
        Assert.Equal(["ok"], await storage.File.IntegrityCheck(Never));
        Assert.True((await storage.Reader.Verify(Entries.HeapId, Never)).IsWhole);
        Assert.Equal(3, (await storage.Reader.Verify(Entries.HeapId, Never)).Entries);
        // The diary still takes no change.
        await Assert.ThrowsAsync<SqliteException>(() =>
            storage.Sql("update diary_entry set at_unix_ms = 0")
        );
        await Assert.ThrowsAsync<SqliteException>(() => storage.Sql("delete from diary_entry"));
    }

    [Fact]
    public async Task Restore_OfTheCopyMadeBefore_TakesTheRestoreBack()
    {
        await using var storage = await Filled();
        var backup = (await storage.Backups.Make(BackupKind.Asked, Never)).Backup!;
        await ChangeMuch(storage);
        var later = await Content(storage);
        await using var first = storage.Backups.Open(backup.Name)!;
        var safety = (await storage.Backups.Restore(first, backup.Name, null, Never)).Backup!;

        await using var second = storage.Backups.Open(safety.Name)!;
        Assert.Null((await storage.Backups.Restore(second, safety.Name, null, Never)).Refusal);

        Assert.Equal(later, await Content(storage));
        Assert.True((await storage.Reader.Verify(Entries.HeapId, Never)).IsWhole);
    }

    [Fact]
    public async Task Restore_InAnotherFolder_BringsKeysAndLeavesThoseThatAreThere()
    {
        await using var storage = await Filled();
        Directory.CreateDirectory(Path.Combine(storage.Folder, "keys"));
        await File.WriteAllTextAsync(Path.Combine(storage.Folder, "keys", Key), "<key/>", Never);
        var backup = (await storage.Backups.Make(BackupKind.Asked, Never)).Backup!;
        await using var other = await TemporaryStorage.Ready();
        var own = Path.Combine(other.Folder, "keys", "own.xml");
        Directory.CreateDirectory(Path.GetDirectoryName(own)!);
        await File.WriteAllTextAsync(own, "own", Never);

        await using var zip = storage.Backups.Open(backup.Name)!;
        var restored = await other.Backups.Restore(zip, backup.Name, null, Never);

        // Nothing was kept there, so there was nothing to save.
        Assert.Equal(new BackupMade(null, null), restored);
        Assert.Equal(await Content(storage), await Content(other));
        Assert.Equal(
            "<key/>",
            await File.ReadAllTextAsync(Path.Combine(other.Folder, "keys", Key), Never)
        );
        Assert.Equal("own", await File.ReadAllTextAsync(own, Never));
    }

    [Theory]
    [MemberData(nameof(ReleasedSchemas))]
    public async Task Restore_OfAnOlderSchema_IsBroughtToTheNewest(int schema)
    {
        await using var old = new TemporaryStorage();
        await old.Sql(
            await File.ReadAllTextAsync(
                Path.Combine(
                    AppContext.BaseDirectory,
                    "Fixtures",
                    string.Create(CultureInfo.InvariantCulture, $"schema-{schema}.sql")
                ),
                Never
            )
        );
        await old.Sql("pragma wal_checkpoint(truncate)");
        SqliteConnection.ClearAllPools();
        await using var storage = await Filled();

        await using var zip = Zips.Around(
            await File.ReadAllBytesAsync(old.FileName, Never),
            schema
        );
        var restored = await storage.Backups.Restore(zip, "old.zip", null, Never);

        Assert.Null(restored.Refusal);
        Assert.NotNull(restored.Backup);
        Assert.Equal(
            [SiteContext.Schema.ToString(CultureInfo.InvariantCulture)],
            await storage.Sql("select max(number) from schema_number")
        );
        Assert.Equal("Fixture Garden", (await storage.Store.Find<Site>(Site.OnlyId, Never))!.Name);
        Assert.Equal(["ok"], await storage.File.IntegrityCheck(Never));
        Assert.Null(await storage.File.BringUpToDate(Never));
        foreach (var heap in await storage.Store.All<KeptHeap>(Never))
        {
            Assert.True((await storage.Reader.Verify(heap.Id, Never)).IsWhole);
        }
    }

    [Fact]
    public async Task Restore_OfABackupFromBeforeATokenWasTakenBack_LeavesItTakenBack()
    {
        await using var storage = await Filled();
        var devices = new KeepDevices(storage.Devices, storage.Clock);
        var (device, token, _) = await devices.Add("lost phone", Never);
        var backup = (await storage.Backups.Make(BackupKind.Asked, Never)).Backup!;
        await devices.Revoke(device!.Id, Never);

        await using var zip = storage.Backups.Open(backup.Name)!;
        Assert.Null((await storage.Backups.Restore(zip, backup.Name, null, Never)).Refusal);

        Assert.Null(await devices.Of(token, Never));
        Assert.NotNull(Assert.Single(await devices.All(Never)).RevokedAt);
    }

    public static TheoryData<string, string> Wrong =>
        new()
        {
            { "text", "is no zip" },
            { "truncated", "is no zip, or was cut off" },
            { "no manifest", "without the list of contents" },
            { "other manifest", "without the list of contents" },
            { "traversal", "holds a part named \"../../evil.db\"" },
            { "stranger", "holds a part named \"keys/evil.sh\"" },
            { "twice", "holds a part named \"heapwright.db\"" },
            { "listed only", "lacks the part keys/" + Key },
            { "hash", "The part heapwright.db of wrong.zip is not as its list of contents says" },
            { "longer", "The part heapwright.db of wrong.zip is not as its list of contents says" },
            { "newer", "schema 99, made by a newer version" },
            { "newer inside", "schema 99, made by a newer version" },
            { "newer form", "is a backup of form 2" },
            { "large", "would unpack to more than 8192 MiB" },
            { "no database", "is damaged" },
            { "empty database", "is damaged" },
        };

    [Theory]
    [MemberData(nameof(Wrong))]
    public async Task Restore_OfAWrongFile_IsRefusedInASentenceAndChangesNothing(
        string how,
        string says
    )
    {
        await using var storage = await Filled();
        var backup = (await storage.Backups.Make(BackupKind.Asked, Never)).Backup!;
        var before = await Content(storage);

        await using var zip = await Spoilt(storage, backup.Name, how);
        var look = await storage.Backups.Look(zip, "wrong.zip", Never);
        var restored = await storage.Backups.Restore(zip, "wrong.zip", null, Never);

        Assert.Contains(says, Words.Of(look.Refusal!.Why), StringComparison.Ordinal);
        Assert.Equal(Words.Of(look.Refusal.Why), Words.Of(restored.Refusal!.Why));
        Assert.Equal(before, await Content(storage));
        // No copy of what is there, nothing left behind, nothing written elsewhere.
        Assert.Equal(
            [backup.Name],
            Directory
                .GetFileSystemEntries(Path.Combine(storage.Folder, "backups"))
                .Select(Path.GetFileName)
        );
        Assert.False(File.Exists(Path.Combine(storage.Folder, "evil.db")));
    }

    [Fact]
    public async Task Restore_OfAnotherFileThanWasLookedAt_IsRefused()
    {
        await using var storage = await Filled();
        var backup = (await storage.Backups.Make(BackupKind.Asked, Never)).Backup!;
        await using var zip = storage.Backups.Open(backup.Name)!;

        var restored = await storage.Backups.Restore(zip, backup.Name, new string('0', 64), Never);

        Assert.Equal("backup.other_now", restored.Refusal!.Why.Code);
    }

    [Fact]
    public async Task Restore_WhileOthersWrite_LosesNothingThatWasAcknowledged()
    {
        await using var storage = await Filled();
        var backup = (await storage.Backups.Make(BackupKind.Asked, Never)).Backup!;
        using var stop = new CancellationTokenSource();
        var kept = new List<Guid>();
        var writer = Task.Run(
            async () =>
            {
                for (var n = 100; !stop.IsCancellationRequested; n++)
                {
                    var outcomes = await storage.Diary.Append(
                        Entries.HeapId,
                        [Entries.Judged(Entries.Read(n, 4, 40))],
                        Never
                    );
                    if (outcomes[0].Status == AppendStatus.Kept)
                    {
                        kept.Add(Entries.Id(n));
                    }
                }
            },
            Never
        );
        await using var zip = storage.Backups.Open(backup.Name)!;
        var safeties = new List<string>();
        for (var round = 0; round < 3; round++)
        {
            var restored = await storage.Backups.Restore(zip, backup.Name, null, Never);
            Assert.Null(restored.Refusal);
            safeties.Add(restored.Backup!.Name);
        }

        await stop.CancelAsync();
        await writer;

        // Each acknowledged entry is in the diary now, or in one of the copies that were made before.
        var found = (await storage.Sql("select entry_id from diary_entry")).ToHashSet(
            StringComparer.OrdinalIgnoreCase
        );
        foreach (var name in safeties)
        {
            found.UnionWith(await EntriesIn(storage, name));
        }

        Assert.NotEmpty(kept);
        Assert.DoesNotContain(kept, id => !found.Contains(id.ToString()));
        Assert.Equal(["ok"], await storage.File.IntegrityCheck(Never));
        Assert.True((await storage.Reader.Verify(Entries.HeapId, Never)).IsWhole);
    }

    [Fact]
    public async Task Nightly_TenNights_KeepsTheNewestSeven()
    {
        await using var storage = await Filled();
        var nightly = new NightlyBackup(storage.Backups, storage.Store, storage.Clock);
        var asked = await storage.Backups.Make(BackupKind.Asked, Never);
        for (var hour = 0; hour < 10 * 24; hour++)
        {
            await nightly.IfDue(Never);
            storage.Clock.Advance(TimeSpan.FromHours(1));
        }

        var all = await storage.Backups.All(Never);

        // One at the start, since there was none, then one at three o'clock in London, which is two in UTC.
        Assert.Equal(
            [
                "heapwright-20260611T020000Z-nightly.zip",
                "heapwright-20260610T020000Z-nightly.zip",
                "heapwright-20260609T020000Z-nightly.zip",
                "heapwright-20260608T020000Z-nightly.zip",
                "heapwright-20260607T020000Z-nightly.zip",
                "heapwright-20260606T020000Z-nightly.zip",
                "heapwright-20260605T020000Z-nightly.zip",
                asked.Backup!.Name,
            ],
            all.Select(b => b.Name)
        );
        Assert.Null(nightly.Failure);
    }

    [Fact]
    public async Task Nightly_NoSiteYet_MakesNone()
    {
        await using var storage = await TemporaryStorage.Ready();

        Assert.Null(
            await new NightlyBackup(storage.Backups, storage.Store, storage.Clock).IfDue(Never)
        );
        Assert.Empty(await storage.Backups.All(Never));
    }

    [Fact]
    public async Task Make_FolderCannotBeWritten_SaysSoAndLeavesTheOlder()
    {
        await using var storage = await Filled();
        var nightly = new NightlyBackup(storage.Backups, storage.Store, storage.Clock);
        var good = (await nightly.IfDue(Never))!.Backup!;
        // A file in the place of the list of keys: the backup cannot be finished.
        var keys = Path.Combine(storage.Folder, "keys");
        Directory.CreateDirectory(keys);
        File.CreateSymbolicLink(Path.Combine(keys, Key), Path.Combine(storage.Folder, "gone"));
        storage.Clock.Advance(TimeSpan.FromDays(1));

        var made = await nightly.IfDue(Never);

        Assert.Equal("backup.not_written", made!.Refusal!.Why.Code);
        Assert.Equal(storage.Clock.GetUtcNow(), nightly.Failure!.Value.At.ToDateTimeOffset());
        Assert.Equal([good], await storage.Backups.All(Never));
        Assert.Equal(
            [good.Name],
            Directory.GetFiles(Path.Combine(storage.Folder, "backups")).Select(Path.GetFileName)
        );
    }

    [Fact]
    public async Task Make_AfterOneWasKilledInTheMiddle_ShowsNoneOfItAndClearsItAway()
    {
        await using var storage = await Filled();
        var good = (await storage.Backups.Make(BackupKind.Asked, Never)).Backup!;
        var folder = Path.Combine(storage.Folder, "backups");
        var half = Path.Combine(folder, ".part-half.zip");
        await File.WriteAllBytesAsync(half, [0x50, 0x4B, 3, 4], Never);
        File.SetLastWriteTimeUtc(half, storage.Clock.GetUtcNow().UtcDateTime.AddHours(-2));
        var cut = Path.Combine(folder, "heapwright-20260601T110000Z-nightly.zip");
        await File.WriteAllBytesAsync(cut, [0x50, 0x4B, 3, 4], Never);

        Assert.Equal([good], await storage.Backups.All(Never));
        storage.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Null((await storage.Backups.Make(BackupKind.Asked, Never)).Refusal);

        Assert.False(File.Exists(half));
        Assert.Equal(2, (await storage.Backups.All(Never)).Length);
    }

    [Theory]
    [InlineData("../heapwright.db")]
    [InlineData("heapwright.db")]
    [InlineData(".held.zip")]
    [InlineData("heapwright-20260601T120000Z-asked.zip/../../heapwright.db")]
    public async Task Open_AnythingButABackup_IsNotThere(string name)
    {
        await using var storage = await Filled();
        await storage.Backups.Make(BackupKind.Asked, Never);

        Assert.Null(storage.Backups.Open(name));
    }

    private static async Task<TemporaryStorage> Filled()
    {
        var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put("acts.imported", ["9"], Things.All, Never);
        await storage.Photos.Keep(
            new Photo(new string('a', 64), "image/png", new byte[] { 1, 2, 3 }),
            Never
        );
        await storage.Entries.Record(
            Entries.HeapId,
            [Entries.Read(1, 2, 55), Entries.Turn(2, 3), Entries.Read(3, 3.5, 48)],
            Never
        );
        return storage;
    }

    private static async Task ChangeMuch(TemporaryStorage storage)
    {
        storage.Clock.Advance(TimeSpan.FromMinutes(5));
        await storage.Recorder.Remove("acts.stock_removed", ["Grass"], [Things.Grass], Never);
        await storage.Recorder.Put(
            "acts.stock_added",
            ["1", "bucket", "Leaves"],
            [Things.Grass with { Id = Things.Id(77), Name = "Leaves" }],
            Never
        );
        await storage.Entries.Record(Entries.HeapId, [Entries.Read(9, 5, 60)], Never);
    }

    private static async Task<string> Content(TemporaryStorage storage)
    {
        var text = new StringBuilder();
        foreach (
            var table in await storage.Sql(
                "select name from sqlite_master where type = 'table' order by name"
            )
        )
        {
            var columns = await storage.Sql($"select name from pragma_table_info('{table}')");
            var row = string.Join(" || '|' || ", columns.Select(c => $"quote(\"{c}\")"));
            text.Append(table).Append('\n');
            text.AppendJoin('\n', await storage.Sql($"select {row} from \"{table}\""));
            text.Append('\n');
        }

        text.AppendJoin(
            '\n',
            await storage.Sql(
                "select sql from sqlite_master where sql is not null order by type, name"
            )
        );
        return text.ToString();
    }

    private static async Task<List<string>> EntriesIn(TemporaryStorage storage, string name)
    {
        var bytes = new MemoryStream();
        await using var zip = storage.Backups.Open(name)!;
        await zip.CopyToAsync(bytes, Never);
        await using var other = new TemporaryStorage();
        await File.WriteAllBytesAsync(
            other.FileName,
            Zips.Parts(bytes.ToArray())["heapwright.db"],
            Never
        );
        return await other.Sql("select entry_id from diary_entry");
    }

    private static async Task<Stream> Spoilt(TemporaryStorage storage, string name, string how)
    {
        var bytes = new MemoryStream();
        await using (var zip = storage.Backups.Open(name)!)
        {
            await zip.CopyToAsync(bytes, Never);
        }

        var parts = Zips.Parts(bytes.ToArray());
        var database = parts["heapwright.db"];
        switch (how)
        {
            case "text":
                return new MemoryStream("a note"u8.ToArray());
            case "truncated":
                return new MemoryStream(bytes.ToArray()[..^40]);
            case "no manifest":
                parts.Remove("manifest.json");
                break;
            case "other manifest":
                parts["manifest.json"] = """{"what":"holiday pictures"}"""u8.ToArray();
                break;
            case "traversal":
                parts["../../evil.db"] = [1];
                break;
            case "stranger":
                parts["keys/evil.sh"] = [1];
                break;
            case "twice":
                return Zips.Of([.. parts, KeyValuePair.Create("heapwright.db", database)]);
            case "listed only":
                Zips.Edit(
                    parts,
                    m =>
                        m["parts"]!
                            .AsArray()
                            .Add(
                                (System.Text.Json.Nodes.JsonNode)
                                    new System.Text.Json.Nodes.JsonObject
                                    {
                                        ["name"] = "keys/" + Key,
                                        ["bytes"] = 1,
                                        ["sha256"] = "",
                                    }
                            )
                );
                break;
            case "hash":
                database[^1] ^= 1;
                break;
            case "longer":
                parts["heapwright.db"] = [.. database, 0];
                break;
            case "newer":
                Zips.Edit(parts, m => m["schema"] = 99);
                break;
            case "newer form":
                Zips.Edit(parts, m => m["form"] = 2);
                break;
            case "large":
                Zips.Edit(parts, m => m["parts"]![0]!["bytes"] = 1L << 40);
                break;
            case "newer inside":
            {
                await using var other = new TemporaryStorage();
                await File.WriteAllBytesAsync(other.FileName, database, Never);
                await other.Sql("insert into schema_number values (99, 'from the future')");
                await other.Sql("pragma wal_checkpoint(truncate)");
                return Zips.Around(await File.ReadAllBytesAsync(other.FileName, Never), 4);
            }

            case "empty database":
                return Zips.Around([], 4);
            default:
                return Zips.Around("no database at all"u8.ToArray(), 4);
        }

        return Zips.Of(parts);
    }
}
