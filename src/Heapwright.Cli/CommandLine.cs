using System.Collections.Immutable;
using System.Reflection;
using System.Text;
using Heapwright.App.Contract;
using Heapwright.App.Texts;
using Heapwright.Cli.Arguments;
using Heapwright.Cli.Commands;
using Heapwright.Cli.Files;

namespace Heapwright.Cli;

/// <summary>
/// Runs one command: everything is worked out in memory, then the files are written, then standard output; whatever
/// goes wrong before that leaves one line on standard error and nothing else.
/// </summary>
internal static class CommandLine
{
    private const string UnitsVariable = "HEAPWRIGHT_UNITS";

    /// <summary>Runs the command that the arguments name.</summary>
    /// <param name="args">The arguments.</param>
    /// <param name="commands">The commands there are.</param>
    /// <param name="terminal">Where to read and write.</param>
    /// <returns>The exit status: 0 answered, 1 answered "no", 2 refused.</returns>
    public static int Run(
        IReadOnlyList<string> args,
        ImmutableArray<Command> commands,
        ITerminal terminal
    )
    {
        int status;
        byte[] output;
        try
        {
            (status, output) = Answer(ArgumentReader.Read(args), commands, terminal);
        }
        catch (InputProblem problem)
        {
            terminal.Complain(problem.Message);
            return ExitStatus.Refused;
        }
#pragma warning disable CA1031 // The last line of defence: a person gets a sentence, not a stack trace.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            terminal.Complain(FaultReport.Of(fault));
            return ExitStatus.Refused;
        }

        try
        {
            terminal.Write(output);
        }
        catch (IOException)
        {
            // The reader went away (as `head` does); what it wanted it has.
        }

        return status;
    }

    private static (int Status, byte[] Output) Answer(
        ParsedArguments parsed,
        ImmutableArray<Command> commands,
        ITerminal terminal
    )
    {
        if (parsed.Version)
        {
            return (ExitStatus.Answered, Utf8($"Heapwright {Version()}\n"));
        }

        if (parsed.Words.Length == 0)
        {
            return parsed.Given.Any(name => name != "--help")
                ? throw ArgumentReader.Wrong("command_missing", parsed.Given[0], Names(commands))
                : (ExitStatus.Answered, Utf8(HelpText.ForAll(commands)));
        }

        if (parsed.Help && CommandChoice.Group(parsed.Words, commands) is { Length: > 0 } group)
        {
            return (ExitStatus.Answered, Utf8(HelpText.ForAll(group)));
        }

        var (command, words) = CommandChoice.Of(parsed.Words, commands);
        if (parsed.Help)
        {
            return (ExitStatus.Answered, Utf8(HelpText.For(command)));
        }

        CommandChoice.CheckFits(command, words, parsed);
        if (parsed.Measures is null && terminal.Variable(UnitsVariable) is { Length: > 0 } units)
        {
            parsed = parsed with { Measures = ArgumentReader.Units(UnitsVariable, units) };
        }

        var reply = command.Answer(new Call(command, words, parsed, terminal));
        var output = parsed.Json ? AnswerBytes.Of(reply.Answer.Json) : Utf8(reply.Answer.Text);
        OutputFiles.Write([.. Drawings(command, reply, parsed)]);
        return (reply.Answer.Yes ? ExitStatus.Answered : ExitStatus.AnsweredNo, output);
    }

    private static IEnumerable<(string, string, byte[])> Drawings(
        Command command,
        Reply reply,
        ParsedArguments parsed
    )
    {
        foreach (
            var (option, path, draw) in new[]
            {
                ("--svg", parsed.Svg, reply.Svg),
                ("--pdf", parsed.Pdf, reply.Pdf),
            }
        )
        {
            if (path is null)
            {
                continue;
            }

            if (draw is not null)
            {
                yield return (option, path, draw());
            }
            else if (reply.Answer.Yes)
            {
                throw ArgumentReader.Wrong("nothing_to_draw", option, command.Name);
            }
        }
    }

    private static byte[] Utf8(string text) =>
        Encoding.UTF8.GetBytes(text.Length == 0 || text.EndsWith('\n') ? text : text + "\n");

    private static string Names(ImmutableArray<Command> commands) =>
        string.Join(", ", commands.Select(c => c.Name));

    private static string Version() =>
        typeof(CommandLine)
            .Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()
            ?.InformationalVersion
        ?? Words.Of("cli.version_unknown");
}
