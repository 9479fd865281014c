namespace Heapwright.Docs.Tests;

/// <summary>One command of the documentation and what it is said to print.</summary>
/// <param name="Page">The page, from the root.</param>
/// <param name="Line">The line of the command in it.</param>
/// <param name="Mark">What follows <c>console</c> on the fence: nothing, <c>no-run</c>, <c>exit-1</c> or <c>exit-2</c>.</param>
/// <param name="Command">The command; later lines of it follow line feeds.</param>
/// <param name="Printed">The lines below it; none if the page does not show them.</param>
internal sealed record ConsoleBlock(
    string Page,
    int Line,
    string Mark,
    string Command,
    IReadOnlyList<string> Printed
)
{
    private const string Fence = "```";

    /// <summary>Reads the commands of a page: <c>$ </c> begins one, <c>&gt; </c> goes on with it.</summary>
    /// <param name="page">The name to give it.</param>
    /// <param name="text">Its text.</param>
    public static IReadOnlyList<ConsoleBlock> Of(string page, string text)
    {
        var blocks = new List<ConsoleBlock>();
        string? mark = null;
        var lines = text.Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i];
            if (line.StartsWith(Fence, StringComparison.Ordinal))
            {
                var words = line[Fence.Length..].Split(' ', StringSplitOptions.RemoveEmptyEntries);
                mark =
                    mark is null && words is ["console", ..] ? string.Join(' ', words[1..]) : null;
            }
            else if (mark is not null && line.StartsWith("$ ", StringComparison.Ordinal))
            {
                blocks.Add(new ConsoleBlock(page, i + 1, mark, line[2..], []));
            }
            else if (mark is not null && blocks.Count > 0)
            {
                blocks[^1] = blocks[^1].With(line);
            }
        }

        return blocks;
    }

    /// <summary>Whether an output is the printed one; a printed line <c>...</c> stands for any number of lines.</summary>
    /// <param name="output">The lines of the output.</param>
    public bool Matches(IReadOnlyList<string> output) =>
        Printed.Count == 0 || Match(Printed, output);

    private static bool Match(IReadOnlyList<string> printed, IReadOnlyList<string> output)
    {
        // Kept as a table of what is reachable, so that several gaps cannot blow up.
        var reached = new bool[output.Count + 1];
        reached[0] = true;
        foreach (var line in printed)
        {
            var next = new bool[output.Count + 1];
            for (var i = 0; i <= output.Count; i++)
            {
                next[i] =
                    line == "..."
                        ? reached[i] || (i > 0 && next[i - 1])
                        : i > 0 && reached[i - 1] && output[i - 1] == line;
            }

            reached = next;
        }

        return reached[^1];
    }

    private ConsoleBlock With(string line) =>
        Printed.Count == 0 && line.StartsWith("> ", StringComparison.Ordinal)
            ? this with
            {
                Command = Command + "\n" + line[2..],
            }
            : this with
            {
                Printed = [.. Printed, line],
            };
}
