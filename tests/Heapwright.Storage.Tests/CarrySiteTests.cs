using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Sites;

namespace Heapwright.Storage.Tests;

public sealed class CarrySiteTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    [Fact]
    public async Task Export_BroughtIntoAnEmptySite_GivesTheSameThings()
    {
        await using var from = await TemporaryStorage.Ready();
        await using var to = await TemporaryStorage.Ready();
        await from.Recorder.Put("acts.imported", ["10"], Things.All, Never);
        var text = Bytes(await new CarrySite(from.Recorder, from.Diary).Export(Never));

        var preview = await new CarrySite(to.Recorder, to.Diary).Preview(text, Never);
        var outcome = await new CarrySite(to.Recorder, to.Diary).BringIn(text, Never);

        Assert.Null(preview.Refusal);
        Assert.Equal(10, preview.Writes);
        Assert.True(outcome.IsDone);
        Assert.Equal(
            Held(await new CarrySite(from.Recorder, from.Diary).Export(Never)),
            Held(await new CarrySite(to.Recorder, to.Diary).Export(Never))
        );
    }

    [Fact]
    public async Task Export_BroughtIntoAnEmptySite_BringsTheRecordAndItsUndo()
    {
        await using var from = await TemporaryStorage.Ready();
        await using var to = await TemporaryStorage.Ready();
        await from.Recorder.Put("acts.imported", ["10"], Things.All, Never);
        var stock = new KeepStock(from.Recorder);
        await stock.Add(Things.Grass with { Id = Guid.CreateVersion7(), Name = "Second" }, Never);
        await from.Recorder.Undo(2, Never);
        var text = Bytes(await new CarrySite(from.Recorder, from.Diary).Export(Never));

        var outcome = await new CarrySite(to.Recorder, to.Diary).BringIn(text, Never);

        var was = await from.Store.Record(Never);
        var now = await to.Store.Record(Never);
        Assert.Equal(3, was.Length);
        Assert.Equal(4, now.Length);
        Assert.Equal("acts.record_imported", outcome.Act!.What);
        for (var i = 0; i < was.Length; i++)
        {
            Assert.Equal(
                (was[i].At, was[i].What, was[i].Undoes),
                (now[i].At, now[i].What, now[i].Undoes)
            );
            Assert.Equal(was[i].Changes, now[i].Changes);
        }

        var undone = await to.Recorder.Undo(3, Never);
        Assert.True(undone.IsDone);
        Assert.Equal(2, (await to.Store.All<StockEntry>(Never)).Length);
    }

    /// <summary>Files that were written before the record was in them are still read.</summary>
    [Fact]
    public async Task Import_OfSchemaOne_BringsTheThingsByOneAct()
    {
        await using var from = await TemporaryStorage.Ready();
        await using var to = await TemporaryStorage.Ready();
        await from.Recorder.Put("acts.imported", ["10"], Things.All, Never);
        var old = JsonNode
            .Parse(await new CarrySite(from.Recorder, from.Diary).Export(Never))!
            .AsObject();
        Assert.True(old.Remove("record"));
        old["schema"] = 1;

        var outcome = await new CarrySite(to.Recorder, to.Diary).BringIn(
            Bytes(old.ToJsonString()),
            Never
        );

        Assert.Equal("acts.imported", outcome.Act!.What);
        Assert.Single(await to.Store.Record(Never));
        Assert.Equal(
            Held(await new CarrySite(from.Recorder, from.Diary).Export(Never)),
            Held(await new CarrySite(to.Recorder, to.Diary).Export(Never))
        );
    }

    [Theory]
    [InlineData("number", "0", "sites.import_record")]
    [InlineData("what", "\"acts.no_such\"", "sites.import_record")]
    [InlineData("what", "\"acts.undone\"", "sites.import_record")]
    [InlineData("undoes", "7", "sites.import_record")]
    [InlineData("changes", "[]", "sites.import_record_end")]
    public async Task Import_RecordThatDoesNotHoldTogether_IsRefusedAndChangesNothing(
        string field,
        string value,
        string code
    )
    {
        await using var from = await TemporaryStorage.Ready();
        await using var to = await TemporaryStorage.Ready();
        await from.Recorder.Put("acts.imported", [], Things.All, Never);
        var file = JsonNode.Parse(await new CarrySite(from.Recorder, from.Diary).Export(Never))!;
        file["record"]![0]![field] = JsonNode.Parse(value);
        if (field == "what" && value.Contains("undone", StringComparison.Ordinal))
        {
            file["record"]![0]!["values"] = new JsonArray();
        }

        var outcome = await new CarrySite(to.Recorder, to.Diary).BringIn(
            Bytes(file.ToJsonString()),
            Never
        );

        var refusal = Assert.Single(outcome.Refusals);
        Assert.Equal(code, refusal.Why.Code);
        Assert.NotEmpty(App.Texts.Words.Of(refusal.Why));
        Assert.Empty(await to.Store.Record(Never));
    }

    [Fact]
    public async Task Import_SameFileAgain_DoublesNothing()
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put("acts.imported", ["10"], Things.All, Never);
        var carry = new CarrySite(storage.Recorder, storage.Diary);
        var text = Bytes(await carry.Export(Never));

        var preview = await carry.Preview(text, Never);
        var outcome = await carry.BringIn(text, Never);

        Assert.Equal(0, preview.Writes);
        Assert.Equal(10, preview.Rows.Sum(r => r.Same));
        Assert.Null(outcome.Act);
        Assert.Single(await storage.Store.All<StockEntry>(Never));
    }

    [Fact]
    public async Task Import_Undone_LeavesTheSiteAsItWas()
    {
        await using var from = await TemporaryStorage.Ready();
        await using var to = await TemporaryStorage.Ready();
        await from.Recorder.Put("acts.imported", ["10"], Things.All, Never);
        await new KeepStock(to.Recorder).Add(Things.Grass with { Amount = 1 }, Never);
        var before = await new CarrySite(to.Recorder, to.Diary).Export(Never);
        var text = Bytes(await new CarrySite(from.Recorder, from.Diary).Export(Never));

        var preview = await new CarrySite(to.Recorder, to.Diary).Preview(text, Never);
        var done = await new CarrySite(to.Recorder, to.Diary).BringIn(text, Never);
        await to.Recorder.Undo(done.Act!.Number, Never);

        Assert.Equal(1, preview.Rows.Single(r => r.Kind == "stock").Changed);
        Assert.Equal(Held(before), Held(await new CarrySite(to.Recorder, to.Diary).Export(Never)));
    }

    [Theory]
    [InlineData("", "sites.import_missing")]
    [InlineData("not json", "sites.import_not_json")]
    [InlineData("{}", "sites.import_not_json")]
    [InlineData("null", "sites.import_not_json")]
    [InlineData(
        """{"schema":1,"what":"shopping list","exported_at":"2026-06-01T00:00:00Z"}""",
        "sites.import_other"
    )]
    [InlineData(
        """{"schema":5,"what":"heapwright_site","exported_at":"2026-06-01T00:00:00Z"}""",
        "sites.import_newer"
    )]
    [InlineData(
        """{"schema":1,"what":"heapwright_site","exported_at":"2026-06-01T00:00:00Z","pets":[]}""",
        "sites.import_not_json"
    )]
    [InlineData(
        """{"schema":1,"what":"heapwright_site","exported_at":"2026-06-01T00:00:00Z","bays":[{"id":"00000000-0000-4000-8000-000000000001","name":"Bay","shape":"box","length_m":-2,"width_m":1,"height_m":1}]}""",
        "sites.import_fault"
    )]
    [InlineData(
        """{"schema":1,"what":"heapwright_site","exported_at":"2026-06-01T00:00:00Z","bays":[{"id":"00000000-0000-4000-8000-000000000001","name":"A","shape":"ring","diameter_m":1,"height_m":1},{"id":"00000000-0000-4000-8000-000000000001","name":"B","shape":"ring","diameter_m":1,"height_m":1}]}""",
        "sites.import_twice"
    )]
    [InlineData(
        """{"schema":4,"what":"heapwright_site","exported_at":"2026-06-01T00:00:00Z","lessons":[{"id":"00000000-0000-4000-8000-000000000001","heap_id":"00000000-0000-4000-8000-000000000002","name":"A","bin":{},"made_at":"2026-06-01T00:00:00Z","readings":5,"parameters":{"luck":{"mean":1,"deviation":0.5}}}]}""",
        "sites.import_fault"
    )]
    public async Task Import_WrongFile_IsRefusedAndChangesNothing(string text, string code)
    {
        await using var storage = await TemporaryStorage.Ready();
        var carry = new CarrySite(storage.Recorder, storage.Diary);

        var preview = await carry.Preview(Bytes(text), Never);
        var outcome = await carry.BringIn(Bytes(text), Never);

        Assert.Equal(code, preview.Refusal!.Why.Code);
        Assert.Equal(code, outcome.Refusals.Single().Why.Code);
        Assert.NotEmpty(App.Texts.Words.Of(preview.Refusal.Why));
        Assert.Empty(await storage.Store.Latest(5, Never));
    }

    // Everything in a file but the record of how it came about.
    private static string Held(string text)
    {
        var file = JsonNode.Parse(text)!.AsObject();
        file.Remove("record");
        return file.ToJsonString();
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
