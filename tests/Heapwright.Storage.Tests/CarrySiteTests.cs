using System.Text;
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
        await from.Recorder.Put("acts.imported", ["8"], Things.All, Never);
        var text = Bytes(await new CarrySite(from.Recorder).Export(Never));

        var preview = await new CarrySite(to.Recorder).Preview(text, Never);
        var outcome = await new CarrySite(to.Recorder).BringIn(text, Never);

        Assert.Null(preview.Refusal);
        Assert.Equal(8, preview.Writes);
        Assert.True(outcome.IsDone);
        Assert.Equal(
            await new CarrySite(from.Recorder).Export(Never),
            await new CarrySite(to.Recorder).Export(Never)
        );
    }

    [Fact]
    public async Task Import_SameFileAgain_DoublesNothing()
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put("acts.imported", ["8"], Things.All, Never);
        var carry = new CarrySite(storage.Recorder);
        var text = Bytes(await carry.Export(Never));

        var preview = await carry.Preview(text, Never);
        var outcome = await carry.BringIn(text, Never);

        Assert.Equal(0, preview.Writes);
        Assert.Equal(8, preview.Rows.Sum(r => r.Same));
        Assert.Null(outcome.Act);
        Assert.Single(await storage.Store.All<StockEntry>(Never));
    }

    [Fact]
    public async Task Import_Undone_LeavesTheSiteAsItWas()
    {
        await using var from = await TemporaryStorage.Ready();
        await using var to = await TemporaryStorage.Ready();
        await from.Recorder.Put("acts.imported", ["8"], Things.All, Never);
        await new KeepStock(to.Recorder).Add(Things.Grass with { Amount = 1 }, Never);
        var before = await new CarrySite(to.Recorder).Export(Never);
        var text = Bytes(await new CarrySite(from.Recorder).Export(Never));

        var preview = await new CarrySite(to.Recorder).Preview(text, Never);
        var done = await new CarrySite(to.Recorder).BringIn(text, Never);
        await to.Recorder.Undo(done.Act!.Number, Never);

        Assert.Equal(1, preview.Rows.Single(r => r.Kind == "stock").Changed);
        Assert.Equal(before, await new CarrySite(to.Recorder).Export(Never));
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
        """{"schema":2,"what":"heapwright_site","exported_at":"2026-06-01T00:00:00Z"}""",
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
    public async Task Import_WrongFile_IsRefusedAndChangesNothing(string text, string code)
    {
        await using var storage = await TemporaryStorage.Ready();
        var carry = new CarrySite(storage.Recorder);

        var preview = await carry.Preview(Bytes(text), Never);
        var outcome = await carry.BringIn(Bytes(text), Never);

        Assert.Equal(code, preview.Refusal!.Why.Code);
        Assert.Equal(code, outcome.Refusals.Single().Why.Code);
        Assert.NotEmpty(App.Texts.Words.Of(preview.Refusal.Why));
        Assert.Empty(await storage.Store.Latest(5, Never));
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
