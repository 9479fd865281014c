namespace Heapwright.App.Tests.Cli;

public sealed class ArgumentTests
{
    [Theory]
    [InlineData("--jsn", "heapwright: \"--jsn\" is not an option; the nearest is --json")]
    [InlineData("--inptu=x", "heapwright: \"--inptu\" is not an option; the nearest is --input")]
    [InlineData("-x", "heapwright: \"-x\" is not an option")]
    [InlineData("--json=yes", "heapwright: --json takes no value, \"yes\" was found")]
    [InlineData("--input", "heapwright: --input needs a value")]
    [InlineData("--input=", "heapwright: --input needs a value")]
    [InlineData("--seed=-1", "heapwright: --seed \"-1\" is not allowed; a whole number from 0 to")]
    [InlineData("--seed=9007199254740992", "heapwright: --seed \"9007199254740992\" is not")]
    [InlineData("--seed=1e3", "heapwright: --seed \"1e3\" is not allowed")]
    [InlineData("--paper=a4", "heapwright: --paper means nothing to mix; it takes --input")]
    [InlineData("--svg=x.svg", "heapwright: --svg means nothing to mix; it takes --input")]
    [InlineData("peas", "heapwright: \"peas\" after mix was not expected")]
    [InlineData("-", "heapwright: \"-\" after mix was not expected")]
    public void Mix_WithAWrongArgument_IsRefusedInOneSentence(string argument, string sentence)
    {
        var terminal = new MemoryTerminal();

        Assert.Equal(2, SampleCommands.Run(terminal, "mix", argument));

        Assert.StartsWith(sentence, Assert.Single(terminal.Complaints), StringComparison.Ordinal);
        Assert.Empty(terminal.Output);
    }

    [Theory]
    [InlineData("mixx", "heapwright: \"mixx\" is not a command; the nearest is mix (known: ")]
    [InlineData("", "heapwright: \"\" is not a command")]
    [InlineData("materials", "heapwright: materials needs one more word: search, list")]
    [InlineData(
        "materials serch",
        "heapwright: materials \"serch\" is not known; the nearest is search"
    )]
    [InlineData("materials search", "heapwright: materials search needs TEXT after it")]
    [InlineData("--json", "heapwright: --json was given without a command; name one first")]
    [InlineData("mix --json --json", "heapwright: --json stands twice")]
    [InlineData("mix --input --json", "heapwright: --input needs a value")]
    [InlineData("build --paper a5 --pdf x", "heapwright: --paper \"a5\" is not known; a4, letter")]
    [InlineData("build --paper a4", "heapwright: --paper needs --pdf FILE")]
    [InlineData("build --svg x --pdf ./x", "heapwright: --svg and --pdf both name \"x\"")]
    public void CommandLine_ThatMakesNoSense_IsRefusedInOneSentence(string line, string sentence)
    {
        var terminal = new MemoryTerminal();

        Assert.Equal(2, SampleCommands.Run(terminal, line.Split(' ')));

        Assert.StartsWith(sentence, Assert.Single(terminal.Complaints), StringComparison.Ordinal);
        Assert.Empty(terminal.Output);
    }

    [Fact]
    public void Search_WordsAfterTwoDashes_AreNoOptions()
    {
        var terminal = new MemoryTerminal();

        Assert.Equal(
            0,
            SampleCommands.Run(terminal, "materials", "search", "--json", "--", "--json", "tea")
        );

        Assert.Equal("{\"schema\":1,\"text\":\"--json tea\"}\n", terminal.Output);
    }

    [Fact]
    public void Nothing_Asked_ShowsTheHelp()
    {
        var terminal = new MemoryTerminal();

        Assert.Equal(0, SampleCommands.Run(terminal));

        Assert.StartsWith(
            "Heapwright plans a hot compost heap from what is at hand.\n",
            terminal.Output,
            StringComparison.Ordinal
        );
        Assert.Empty(terminal.Complaints);
    }

    [Fact]
    public void Help_OfTheFirstWordOfSeveralCommands_ShowsThese()
    {
        var terminal = new MemoryTerminal();

        Assert.Equal(0, SampleCommands.Run(terminal, "materials", "--help"));

        Assert.Contains(
            "heapwright materials search TEXT",
            terminal.Output,
            StringComparison.Ordinal
        );
        Assert.Contains("heapwright materials list", terminal.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("heapwright mix", terminal.Output, StringComparison.Ordinal);
        Assert.Empty(terminal.Complaints);
    }

    [Fact]
    public void Version_IsOneLine()
    {
        var terminal = new MemoryTerminal();

        Assert.Equal(0, SampleCommands.Run(terminal, "--version"));

        Assert.Matches(@"^Heapwright \d+\.\d+\.\d+\n$", terminal.Output);
    }
}
