using System.Collections.Immutable;
using Heapwright.App.Diary;

namespace Heapwright.Cli.Commands;

/// <summary>The commands that keep and read diaries, in the order of the help.</summary>
internal static class DiaryCommands
{
    private static readonly ImmutableArray<string> When = ["--at", "--id"];

    /// <summary>The commands.</summary>
    /// <param name="open">Opens what is stored in a folder.</param>
    public static ImmutableArray<Command> Over(Func<string, DiaryDesk> open)
    {
        HeapCommands heaps = new(open);
        EntryCommands entries = new(open);
        LessonCommands lessons = new(open);
        return
        [
            new("heap list", heaps.List),
            new("heap start", heaps.Start)
            {
                TakesInput = true,
                InputIsOptional = true,
                Takes = ["--sheet", "--name", "--built", "--zone", "--aim", "--id"],
            },
            new("heap show", heaps.Show) { WordsAre = "HEAP" },
            new("heap table", heaps.Table) { WordsAre = "HEAP" },
            new("heap record", heaps.Record) { WordsAre = "HEAP", Prints = true },
            new("heap where", heaps.Where) { WordsAre = "TEXT" },
            new("heap taught", lessons.Taught)
            {
                WordsAre = "HEAP",
                Takes = ["--keep", "--forget"],
            },
            new("heap compare", lessons.Compare)
            {
                WordsAre = "HEAP",
                Takes = ["--against", "--without", "--by"],
            },
            new("heap check", heaps.Check) { WordsAre = "HEAP" },
            new("reading add", entries.Reading)
            {
                Needs = ["--heap", "--temperature"],
                Takes = ["--spot", "--depth", "--air", "--with", .. When],
            },
            new("reading correct", entries.CorrectReading)
            {
                Needs = ["--heap", "--entry", "--temperature"],
                Takes = ["--id"],
            },
            new("entry turn", entries.Turn)
            {
                Needs = ["--heap"],
                Takes = ["--how", "--part", .. When],
            },
            new("entry water", entries.Water) { Needs = ["--heap", "--amount"], Takes = When },
            new("entry rain", entries.Rain) { Needs = ["--heap", "--amount"], Takes = When },
            new("entry cover", entries.Cover) { Needs = ["--heap", "--kind"], Takes = When },
            new("entry spread", entries.Spread)
            {
                Needs = ["--heap", "--bed", "--amount"],
                Takes = When,
            },
            new("entry test", entries.Test)
            {
                Needs = ["--heap", "--test"],
                Takes = ["--values", .. When],
            },
            new("entry note", entries.Note)
            {
                WordsAre = "TEXT",
                Needs = ["--heap"],
                Takes = When,
            },
            new("entry close", entries.Close) { Needs = ["--heap"], Takes = When },
            new("entry send", entries.Send) { TakesInput = true, Needs = ["--heap"] },
            new("entry strike", entries.Strike) { Needs = ["--heap", "--entry"], Takes = ["--id"] },
            new("import", new TableCommand(open).Import)
            {
                WordsAre = "FILE",
                Needs = ["--heap"],
                Takes = ["--preview", "--unit", "--dates"],
            },
            new("device add", new DeviceCommands(open).Add)
            {
                WordsAre = "NAME",
                Takes = ["--role"],
            },
            new("device list", new DeviceCommands(open).List),
            new("device revoke", new DeviceCommands(open).Revoke) { WordsAre = "ID" },
        ];
    }
}
