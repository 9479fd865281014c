using System.Collections.Immutable;
using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.Cli;
using Heapwright.Cli.Commands;

namespace Heapwright.App.Tests.Cli;

/// <summary>Commands that do little, to try the frame around them; their names are those of real ones.</summary>
internal static class SampleCommands
{
    /// <summary>Asks for a number below ten: answers its double, "no" from five on, and breaks at seven.</summary>
    public static ImmutableArray<Command> All { get; } =
    [
        new("materials search", call => Found(string.Join(' ', call.Words))) { WordsAre = "TEXT" },
        new("materials list", _ => Found("")),
        new("mix", Double) { TakesInput = true, Samples = true },
        new("build", Draw) { TakesInput = true, Draws = true },
    ];

    /// <summary>Runs a command line over these commands.</summary>
    /// <param name="terminal">The terminal.</param>
    /// <param name="args">The arguments.</param>
    public static int Run(MemoryTerminal terminal, params string[] args) =>
        CommandLine.Run(args, All, terminal);

    private static Reply Found(string text) =>
        new Answer(new JsonObject { ["schema"] = 1, ["text"] = text }, true, "found " + text);

    private static Reply Double(Call call)
    {
        var number = call.Question().Fields("number").Needed("number").Whole(0, 9);
        if (number == 7)
        {
            throw new InvalidOperationException("seven\nbreaks");
        }

        var json = new JsonObject { ["schema"] = 1, ["double"] = 2 * number };
        if (call.Seed is { } seed)
        {
            json["seed"] = seed;
        }

        return new Answer(json, number < 5, $"twice is {2 * number} °\n");
    }

    private static Reply Draw(Call call)
    {
        var reply = Double(call);
        return reply.Answer.Yes
            ? reply with
            {
                Svg = () => Encoding.UTF8.GetBytes("<svg/>"),
                Pdf = () => Encoding.UTF8.GetBytes("%PDF on " + call.Paper),
            }
            : reply;
    }
}
