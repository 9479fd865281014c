using System.Collections.Immutable;
using System.Text;
using Heapwright.App.Texts;
using Heapwright.Cli.Commands;

namespace Heapwright.Cli;

/// <summary>What <c>--help</c> prints.</summary>
internal static class HelpText
{
    /// <summary>The help for everything.</summary>
    /// <param name="commands">The commands.</param>
    public static string ForAll(ImmutableArray<Command> commands)
    {
        var text = new StringBuilder();
        text.Append(Words.Of("cli.purpose")).Append("\n\n");
        var width = commands.Select(c => Usage(c).Length).DefaultIfEmpty(0).Max();
        foreach (var command in commands)
        {
            text.Append("  ")
                .Append(Usage(command).PadRight(width))
                .Append("  ")
                .Append(Words.Of(command.TextCode))
                .Append('\n');
        }

        if (commands.Length > 0)
        {
            text.Append('\n');
        }

        return text.Append(Words.Of("cli.options_for_all")).Append('\n').ToString();
    }

    /// <summary>The help for one command.</summary>
    /// <param name="command">The command.</param>
    public static string For(Command command)
    {
        var text = new StringBuilder();
        text.Append(Words.Of(command.TextCode)).Append("\n\n  ").Append(Usage(command));
        text.Append("\n\n");
        foreach (var option in command.Options)
        {
            text.Append("  ").Append(Words.Of("cli.option_" + option[2..])).Append('\n');
        }

        var more = Words.TryOf(command.TextCode + "_help");
        if (more is not null)
        {
            text.Append('\n').Append(more).Append('\n');
        }

        return text.ToString();
    }

    private static string Usage(Command command)
    {
        var text = new StringBuilder("heapwright ").Append(command.Name);
        if (command.WordsAre is not null)
        {
            text.Append(' ').Append(command.WordsAre);
        }

        if (command.TakesInput)
        {
            text.Append(command.InputIsOptional ? " [--input FILE]" : " --input FILE");
        }

        foreach (var option in command.Needs)
        {
            text.Append(' ').Append(Example(option));
        }

        return text.ToString();
    }

    // The text of an option begins with the option and what its value is.
    private static string Example(string option) =>
        Words.Of("cli.option_" + option[2..]).Split("  ")[0].TrimEnd();
}
