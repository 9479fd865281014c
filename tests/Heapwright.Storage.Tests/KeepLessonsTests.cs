using Heapwright.App.Sites;

namespace Heapwright.Storage.Tests;

public sealed class KeepLessonsTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    [Fact]
    public async Task Keep_ThenUndone_IsGoneAndComesBack()
    {
        await using var storage = await TemporaryStorage.Ready();
        var keep = new KeepLessons(storage.Recorder);
        var lesson = Things.All.OfType<KeptLesson>().Single();

        var kept = await keep.Keep(lesson, Never);
        var used = await keep.Use(lesson.Id, true, Never);
        Assert.True((await storage.Store.Find<KeptLesson>(lesson.Id, Never))!.IsUsed);
        Assert.True((await storage.Recorder.Undo(used.Act!.Number, Never)).IsDone);
        Assert.False((await storage.Store.Find<KeptLesson>(lesson.Id, Never))!.IsUsed);
        var out1 = await keep.Remove(lesson, Never);
        Assert.Null(await storage.Store.Find<KeptLesson>(lesson.Id, Never));
        Assert.True((await storage.Recorder.Undo(out1.Act!.Number, Never)).IsDone);

        var back = await storage.Store.Find<KeptLesson>(lesson.Id, Never);
        Assert.Equal(ItemKinds.Write(lesson), ItemKinds.Write(back!));
        Assert.True(kept.IsDone);
    }

    [Fact]
    public void IsFor_OtherPlace_IsNot()
    {
        var lesson = Things.All.OfType<KeptLesson>().Single();
        var bin = System.Text.Json.Nodes.JsonNode.Parse(lesson.Bin.GetRawText());
        var nowhere = lesson with { BayId = null };

        Assert.True(lesson.IsFor(Things.Id(3), null));
        Assert.False(lesson.IsFor(Things.Id(4), bin));
        Assert.False(lesson.IsFor(null, bin));
        Assert.True(nowhere.IsFor(null, bin));
        bin!["height_m"] = 1.1;
        Assert.False(nowhere.IsFor(null, bin));
    }
}
