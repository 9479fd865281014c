using Heapwright.App.Tests.Cli;
using Heapwright.Cli;
using Heapwright.Cli.Commands;

namespace Heapwright.App.Tests.Hygiene;

/// <summary>The command on the command line: a table as a word, options beside it, what is refused.</summary>
public sealed class CommandTests : IDisposable
{
    private readonly ScratchFolder folder = new();
    private readonly string table;

    public CommandTests()
    {
        table = folder.File("log.csv");
        File.WriteAllText(
            table,
            "day,probe,temperature_c,event\n"
                + string.Join(
                    "\n",
                    Enumerable
                        .Range(1, 14)
                        .Select(d => $"{d},core,57,{(d % 2 == 0 ? "turned" : "")}")
                )
        );
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Table_NamedAsAWordOrAsInput_IsTheSame()
    {
        var word = Run(0, "hygiene", table, "--process", "windrow", "--json").Output;
        var input = Run(0, "hygiene", "--input", table, "--process", "windrow", "--json").Output;

        Assert.Equal(word, input);
        Assert.StartsWith("{\"schema\":1,\"process\":\"windrow\"", word, StringComparison.Ordinal);
    }

    [Fact]
    public void RuleNamed_NotMet_EndsWithOneAndPrintsAllTheSame()
    {
        var pdf = folder.File("record.pdf");
        var terminal = Run(
            1,
            "hygiene",
            table,
            "--process",
            "windrow",
            "--rules",
            "us_503_pfrp_windrow",
            "--pdf",
            pdf
        );

        Assert.StartsWith("%PDF", File.ReadAllText(pdf), StringComparison.Ordinal);
        Assert.Contains("not met", terminal.Output, StringComparison.Ordinal);
        Assert.Empty(terminal.Complaints);
    }

    [Theory]
    [InlineData("--process pit", "--process \"pit\" is not known; the nearest is bin")]
    [InlineData("--process bin --country fr", "--country \"fr\" is not known")]
    [InlineData("--process bin --rules de_55_14", "the nearest is de_55_14d")]
    [InlineData("--process bin --solids lots", "--solids \"lots\" is not allowed")]
    [InlineData("--process bin --svg a.svg", "--svg means nothing to hygiene")]
    [InlineData("--process bin more.csv", "\"more.csv\" after hygiene was not expected")]
    [InlineData("--process bin --input other.csv", "after hygiene was not expected")]
    public void Argument_Wrong_IsRefused(string arguments, string sentence)
    {
        var terminal = Run(2, ["hygiene", table, .. arguments.Split(' ')]);

        Assert.Contains(sentence, Assert.Single(terminal.Complaints), StringComparison.Ordinal);
        Assert.Empty(terminal.Output);
    }

    [Fact]
    public void ProcessInTheQuestionAndBesideIt_IsRefused()
    {
        var question = folder.File("log.json");
        File.WriteAllText(
            question,
            """{"process":"bin","readings":[{"day":1,"temperature_c":55}]}"""
        );

        Assert.Contains(
            "process: stands in the question and beside it",
            Assert.Single(Run(2, "hygiene", "--input", question, "--process", "bin").Complaints),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void NoQuestion_IsRefused() =>
        Assert.Contains(
            "no question was given",
            Assert.Single(Run(2, "hygiene").Complaints),
            StringComparison.Ordinal
        );

    private static MemoryTerminal Run(int status, params string[] arguments)
    {
        var terminal = new MemoryTerminal();
        Assert.Equal(status, CommandLine.Run(arguments, CommandTable.All, terminal));
        return terminal;
    }
}
