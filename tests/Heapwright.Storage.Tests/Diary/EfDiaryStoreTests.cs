using Heapwright.App.Diary;
using Microsoft.Data.Sqlite;
using NodaTime;
using static Heapwright.Storage.Tests.Diary.Entries;

namespace Heapwright.Storage.Tests.Diary;

public sealed class EfDiaryStoreTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    [Fact]
    public async Task Append_Entries_ComeBackAsTheyWereAndChainUp()
    {
        await using var storage = await TemporaryStorage.Ready();
        JudgedEntry[] entries =
        [
            Judged(Read(1, 1, 44)),
            Judged(Turn(2, 2)),
            Judged(Read(3, 3, 58)),
        ];

        var outcomes = await storage.Diary.Append(HeapId, entries, Never);

        Assert.All(outcomes, o => Assert.Equal(AppendStatus.Kept, o.Status));
        Assert.Equal(
            entries.Select(EntryJson.Record),
            (await storage.Diary.Read(HeapId, null, null, Never)).Select(EntryJson.Record)
        );
        var check = await storage.Reader.Verify(HeapId, Never);
        Assert.True(check.IsWhole);
        Assert.Equal(3, check.Entries);
    }

    [Fact]
    public async Task Append_SentTwice_IsKeptOnce()
    {
        await using var storage = await TemporaryStorage.Ready();
        var entry = Read(1, 1, 44);
        await storage.Diary.Append(HeapId, [Judged(entry)], Never);

        var again = await storage.Diary.Append(
            HeapId,
            [
                Judged(entry with { ReceivedAt = At(9), Way = Core.Readings.EntryWay.Mqtt }),
                Judged(entry),
                Judged(Read(2, 2, 50)),
                Judged(Read(2, 2, 50)),
            ],
            Never
        );

        Assert.Equal(
            [
                AppendStatus.AlreadyThere,
                AppendStatus.AlreadyThere,
                AppendStatus.Kept,
                AppendStatus.AlreadyThere,
            ],
            again.Select(o => o.Status)
        );
        Assert.Equal(["2"], await storage.Sql("select count(*) from diary_entry"));
    }

    [Fact]
    public async Task Append_SameIdOtherContent_IsRefusedAndTheFirstStays()
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Diary.Append(HeapId, [Judged(Read(1, 1, 44))], Never);

        var outcome = await storage.Diary.Append(HeapId, [Judged(Read(1, 1, 45))], Never);

        Assert.Equal(AppendStatus.Refused, outcome.Single().Status);
        Assert.Equal(
            EntryJson.Record(Judged(Read(1, 1, 44))),
            EntryJson.Record((await storage.Diary.Find(Id(1), Never))!)
        );
    }

    [Fact]
    public async Task Read_Window_HoldsItsEntriesAndEveryCorrection()
    {
        await using var storage = await TemporaryStorage.Ready();
        var strike = new Core.Readings.CorrectionEntry
        {
            Id = Id(9),
            HeapId = HeapId,
            At = At(30),
            ReceivedAt = At(30),
            Way = Core.Readings.EntryWay.Page,
            Corrects = Id(2),
        };
        await storage.Diary.Append(
            HeapId,
            [
                Judged(Read(1, 1, 44)),
                Judged(Read(2, 5, 50)),
                Judged(Read(3, 9, 55)),
                Judged(strike),
            ],
            Never
        );

        var window = await storage.Diary.Read(
            HeapId,
            Instant.FromDateTimeOffset(At(4)),
            Instant.FromDateTimeOffset(At(6)),
            Never
        );

        Assert.Equal([Id(2), Id(9)], window.Select(e => e.Entry.Id));
    }

    [Theory]
    [InlineData("update diary_entry set record_json = '{}' where place = 1")]
    [InlineData("delete from diary_entry where place = 2")]
    [InlineData("delete from diary_entry")]
    [InlineData(
        "insert or replace into diary_entry select heap_id, place, entry_id, at_unix_ms, is_correction, '{}', chain_sha256 from diary_entry where place = 1"
    )]
    public async Task Sql_ThatChangesTheDiary_IsRefused(string sql)
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Diary.Append(HeapId, [Judged(Read(1, 1, 44)), Judged(Read(2, 2, 50))], Never);

        var problem = await Assert.ThrowsAsync<SqliteException>(() => storage.Sql(sql));

        Assert.Contains("diary", problem.Message, StringComparison.Ordinal);
        Assert.Equal(["2"], await storage.Sql("select count(*) from diary_entry"));
        Assert.True((await storage.Reader.Verify(HeapId, Never)).IsWhole);
    }

    [Theory]
    [InlineData(
        "update diary_entry set record_json = replace(record_json, '50', '56') where place = 2",
        2
    )]
    [InlineData("update diary_entry set at_unix_ms = at_unix_ms + 1 where place = 3", 3)]
    [InlineData(
        "update diary_entry set entry_id = '00000000-0000-4000-9000-000000000077' where place = 1",
        1
    )]
    [InlineData("delete from diary_entry where place = 2", 2)]
    public async Task Verify_AfterTamperingPastTheTriggers_FindsTheRow(string sql, long place)
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Diary.Append(
            HeapId,
            [Judged(Read(1, 1, 44)), Judged(Read(2, 2, 50)), Judged(Read(3, 3, 58))],
            Never
        );
        await storage.Sql("drop trigger diary_entry_is_not_changed");
        await storage.Sql("drop trigger diary_entry_is_not_taken_out");

        await storage.Sql(sql);

        var check = await storage.Reader.Verify(HeapId, Never);
        Assert.Equal(place, check.FirstWrong);
    }

    [Fact]
    public async Task Append_FromManyAtOnce_KeepsEachOnceInOneChain()
    {
        await using var storage = await TemporaryStorage.Ready();

        var all = await Task.WhenAll(
            Enumerable
                .Range(0, 8)
                .Select(async writer =>
                {
                    var kept = 0;
                    for (var i = 0; i < 20; i++)
                    {
                        // Every second entry is sent by all writers.
                        var number = i % 2 == 0 ? i : (1000 * (writer + 1)) + i;
                        var outcome = await storage.Diary.Append(
                            HeapId,
                            [Judged(Read(number + 1, 1 + (number / 1000.0), 50))],
                            Never
                        );
                        kept += outcome.Count(o => o.Status == AppendStatus.Kept);
                    }

                    return kept;
                })
        );

        Assert.Equal(10 + (8 * 10), all.Sum());
        var check = await storage.Reader.Verify(HeapId, Never);
        Assert.True(check.IsWhole);
        Assert.Equal(90, check.Entries);
    }

    [Fact]
    public async Task Diary_OfTwoHeaps_HasAChainForEach()
    {
        await using var storage = await TemporaryStorage.Ready();
        var other = Things.Id(99);
        await storage.Diary.Append(HeapId, [Judged(Read(1, 1, 44))], Never);
        await storage.Diary.Append(other, [Judged(Read(2, 1, 44) with { HeapId = other })], Never);

        Assert.Equal(
            [(HeapId, 1L), (other, 1L)],
            (await storage.Diary.Heaps(Never)).OrderBy(h => h.HeapId)
        );
        Assert.Equal(["1", "1"], await storage.Sql("select place from diary_entry"));
    }
}
