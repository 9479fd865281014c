using System.Diagnostics;

namespace Heapwright.Docs.Tests;

/// <summary>The commands that the documentation shows do what it says.</summary>
public sealed class CommandTests
{
    private static readonly IReadOnlyList<ConsoleBlock> Shown =
    [
        .. Repository.Pages.SelectMany(page => ConsoleBlock.Of(page, Repository.Text(page))),
    ];

    public static TheoryData<string, int> Runnable =>
        [.. Shown.Where(b => b.Mark != "no-run").Select(b => (b.Page, b.Line))];

    [Theory]
    [MemberData(nameof(Runnable))]
    public async Task Command_OfThePage_PrintsWhatThePageSays(string page, int line)
    {
        var block = Shown.Single(b => b.Page == page && b.Line == line);

        var (status, output) = await Run(block.Command);

        var shown = string.Join('\n', output);
        Assert.True(block.Matches(output), $"{page}:{line}: {block.Command}\nprinted\n{shown}");
        Assert.Equal(block.Mark.Length == 0 ? "exit-0" : block.Mark, $"exit-{status}");
    }

    [Fact]
    public void Commands_NotRun_AreOnlyThoseThatStartTheAppOrTheTests() =>
        Assert.All(
            Shown.Where(b => b.Mark == "no-run"),
            b => Assert.Contains(b.Command.Split(' ')[0], new[] { "./run", "./test" })
        );

    [Fact]
    public void Marks_AreKnown() =>
        Assert.All(Shown, b => Assert.Contains(b.Mark, new[] { "", "no-run", "exit-1", "exit-2" }));

    [Fact]
    public async Task Output_OtherThanPrinted_IsNoticed()
    {
        var (status, output) = await Run("./heapwright --version");
        var right = new ConsoleBlock("", 1, "", "", output);

        Assert.Equal(0, status);
        Assert.True(right.Matches(output));
        Assert.False((right with { Printed = ["Heapwright 0.0.0"] }).Matches(output));
        Assert.False((right with { Printed = [.. output, ""] }).Matches(output));
    }

    // Both streams, output first; from the root, as the documentation says.
    private static async Task<(int Status, string[] Output)> Run(string command)
    {
        var start = new ProcessStartInfo("bash")
        {
            UseShellExecute = false,
            WorkingDirectory = Repository.Root,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add(command);
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var cancel = TestContext.Current.CancellationToken;
        var output = process.StandardOutput.ReadToEndAsync(cancel);
        var errors = process.StandardError.ReadToEndAsync(cancel);
        await process.WaitForExitAsync(cancel);
        var text = await output + await errors;
        return (process.ExitCode, text.Length == 0 ? [] : text.TrimEnd('\n').Split('\n'));
    }
}
