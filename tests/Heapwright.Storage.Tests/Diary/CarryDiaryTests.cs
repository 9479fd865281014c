using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using static Heapwright.Storage.Tests.Diary.Entries;

namespace Heapwright.Storage.Tests.Diary;

public sealed class CarryDiaryTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    [Fact]
    public async Task Export_BroughtIntoAnEmptySite_GivesTheSameDiaryAndChain()
    {
        await using var from = await Filled();
        await using var to = await TemporaryStorage.Ready();
        var text = await new CarrySite(from.Recorder, from.Diary).Export(Never);

        var preview = await new CarrySite(to.Recorder, to.Diary).Preview(Bytes(text), Never);
        var outcome = await new CarrySite(to.Recorder, to.Diary).BringIn(Bytes(text), Never);

        Assert.Equal(3, preview.Rows.Single(r => r.Kind == "entry").New);
        Assert.True(outcome.IsDone);
        Assert.Equal(
            await from.Sql("select record_json || chain_sha256 from diary_entry order by place"),
            await to.Sql("select record_json || chain_sha256 from diary_entry order by place")
        );
        Assert.Equal(
            await from.Reader.Verify(HeapId, Never),
            await to.Reader.Verify(HeapId, Never)
        );
    }

    [Fact]
    public async Task Import_Again_DoublesNothing()
    {
        await using var from = await Filled();
        var carry = new CarrySite(from.Recorder, from.Diary);
        var text = await carry.Export(Never);

        await carry.BringIn(Bytes(text), Never);

        Assert.Equal(["3"], await from.Sql("select count(*) from diary_entry"));
        Assert.Equal(
            3,
            (await carry.Preview(Bytes(text), Never)).Rows.Single(r => r.Kind == "entry").Same
        );
    }

    [Theory]
    [InlineData("temperature_c", "59", "sites.import_chain")]
    [InlineData("temperature_c", "\"hot\"", "sites.import_diary")]
    [InlineData("heap_id", "\"00000000-0000-4000-8000-000000000077\"", "sites.import_diary")]
    public async Task Import_DiaryThatWasChanged_IsRefusedAndChangesNothing(
        string field,
        string value,
        string code
    )
    {
        await using var from = await Filled();
        await using var to = await TemporaryStorage.Ready();
        var file = JsonNode.Parse(await new CarrySite(from.Recorder, from.Diary).Export(Never))!;
        file["diaries"]![0]!["entries"]![0]![field] = JsonNode.Parse(value);

        var outcome = await new CarrySite(to.Recorder, to.Diary).BringIn(
            Bytes(file.ToJsonString()),
            Never
        );

        Assert.Equal(code, outcome.Refusals.Single().Why.Code);
        Assert.Equal(["0"], await to.Sql("select count(*) from diary_entry"));
        Assert.Empty(await to.Store.Latest(5, Never));
    }

    [Fact]
    public async Task Import_EntryThatSaysSomethingElseHere_IsRefusedAndChangesNothing()
    {
        await using var from = await Filled();
        await using var to = await TemporaryStorage.Ready();
        await to.Diary.Append(HeapId, [Judged(Read(2, 2, 33))], Never);
        var text = await new CarrySite(from.Recorder, from.Diary).Export(Never);

        var outcome = await new CarrySite(to.Recorder, to.Diary).BringIn(Bytes(text), Never);

        Assert.Equal("sites.import_entry_differs", outcome.Refusals.Single().Why.Code);
        Assert.Equal(["1"], await to.Sql("select count(*) from diary_entry"));
        Assert.Empty(await to.Store.Latest(5, Never));
    }

    private static async Task<TemporaryStorage> Filled()
    {
        var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put("acts.heap_started", ["June heap"], [Things.Heap], Never);
        var outcomes = await storage.Entries.Record(
            HeapId,
            [Read(1, 1, 44), Read(2, 2, 140), Turn(3, 3)],
            Never
        );
        Assert.All(outcomes, o => Assert.Equal(AppendStatus.Kept, o.Status));
        return storage;
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
