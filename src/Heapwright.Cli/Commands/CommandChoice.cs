using System.Collections.Immutable;
using Heapwright.App.Contract;
using Heapwright.Cli.Arguments;
using Heapwright.Cli.Files;

namespace Heapwright.Cli.Commands;

/// <summary>Finds the command that was meant and holds the options against it.</summary>
internal static class CommandChoice
{
    /// <summary>The command that the first words name, and the words left over.</summary>
    /// <param name="words">The words, at least one.</param>
    /// <param name="commands">The commands there are.</param>
    /// <exception cref="InputProblem">No command has this name.</exception>
    public static (Command Command, ImmutableArray<string> Words) Of(
        ImmutableArray<string> words,
        ImmutableArray<Command> commands
    )
    {
        Command? found = null;
        var length = 0;
        foreach (var command in commands)
        {
            var name = command.Name.Split(' ');
            if (
                name.Length > length
                && name.Length <= words.Length
                && name.AsSpan().SequenceEqual(words.AsSpan()[..name.Length])
            )
            {
                (found, length) = (command, name.Length);
            }
        }

        return found is not null ? (found, words[length..]) : throw Unknown(words, commands);
    }

    /// <summary>The commands that begin with a word which is none itself, such as <c>materials</c>; else none.</summary>
    /// <param name="words">The words.</param>
    /// <param name="commands">The commands there are.</param>
    public static ImmutableArray<Command> Group(
        ImmutableArray<string> words,
        ImmutableArray<Command> commands
    ) =>
        words.Length == 1
            ? [.. commands.Where(c => c.Name.StartsWith(words[0] + " ", StringComparison.Ordinal))]
            : [];

    /// <summary>Refuses options and words that mean nothing to the command.</summary>
    /// <param name="command">The command.</param>
    /// <param name="words">The words after its name.</param>
    /// <param name="parsed">The options.</param>
    /// <exception cref="InputProblem">One does not fit, or is missing.</exception>
    public static void CheckFits(
        Command command,
        ImmutableArray<string> words,
        ParsedArguments parsed
    )
    {
        var options = command.Options.ToArray();
        foreach (var option in parsed.Given)
        {
            if (!options.Contains(option, StringComparer.Ordinal))
            {
                throw ArgumentReader.Wrong(
                    "option_elsewhere",
                    option,
                    command.Name,
                    string.Join(", ", options)
                );
            }
        }

        var most = command.TakesRecord && parsed.Input is null ? 1 : 0;
        if (command.WordsAre is null && words.Length > most)
        {
            throw ArgumentReader.Wrong("word_too_many", words[most], command.Name);
        }

        if (command.WordsAre is not null && words.Length == 0)
        {
            throw ArgumentReader.Wrong("word_missing", command.Name, command.WordsAre);
        }

        foreach (var option in command.Needs)
        {
            if (!parsed.Given.Contains(option, StringComparer.Ordinal))
            {
                throw ArgumentReader.Wrong("option_missing", command.Name, option);
            }
        }

        CheckPlaces(parsed);
    }

    private static void CheckPlaces(ParsedArguments parsed)
    {
        if (parsed.Paper is not null && parsed.Pdf is null)
        {
            throw ArgumentReader.Wrong("paper_without_pdf");
        }

        if (
            parsed.Svg is not null
            && parsed.Pdf is not null
            && Path.GetFullPath(parsed.Svg) == Path.GetFullPath(parsed.Pdf)
        )
        {
            throw ArgumentReader.Wrong("same_file", parsed.Svg);
        }

        if (parsed.Svg is not null)
        {
            OutputFiles.Check("--svg", parsed.Svg);
        }

        if (parsed.Pdf is not null)
        {
            OutputFiles.Check("--pdf", parsed.Pdf);
        }
    }

    private static InputProblem Unknown(
        ImmutableArray<string> words,
        ImmutableArray<Command> commands
    )
    {
        if (commands.IsEmpty)
        {
            return ArgumentReader.Wrong("command_unknown_none", words[0]);
        }

        var seconds = commands
            .Select(c => c.Name.Split(' '))
            .Where(name => name.Length == 2 && name[0] == words[0])
            .Select(name => name[1])
            .ToArray();
        if (seconds.Length > 0)
        {
            var known = string.Join(", ", seconds);
            return words.Length == 1
                ? ArgumentReader.Wrong("second_word_missing", words[0], known)
                : ArgumentReader.Wrong(
                    "second_word_unknown",
                    words[0],
                    words[1],
                    Nearest.Of(words[1], seconds),
                    known
                );
        }

        var names = commands.Select(c => c.Name).ToArray();
        var firsts = names.Select(n => n.Split(' ')[0]).Distinct(StringComparer.Ordinal).ToArray();
        return ArgumentReader.Wrong(
            "command_unknown",
            words[0],
            Nearest.Of(words[0], firsts),
            string.Join(", ", firsts)
        );
    }
}
