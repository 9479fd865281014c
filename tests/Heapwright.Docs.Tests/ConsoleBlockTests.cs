namespace Heapwright.Docs.Tests;

public sealed class ConsoleBlockTests
{
    private const string Page = """
        Text with $ no command.

        ```console
        $ cat <<'E'
        > one
        > E
        one
        $ true
        ```

        ```sh
        $ not shown as a session
        ```

        ```console exit-2
        $ false

        last
        ```
        """;

    [Fact]
    public void Page_WithSessions_IsReadCommandByCommand()
    {
        var blocks = ConsoleBlock.Of("a.md", Page);

        Assert.Equal(["cat <<'E'\none\nE", "true", "false"], blocks.Select(b => b.Command));
        Assert.Equal([4, 8, 16], blocks.Select(b => b.Line));
        Assert.Equal(["", "", "exit-2"], blocks.Select(b => b.Mark));
        Assert.Equal(["one"], blocks[0].Printed);
        Assert.Empty(blocks[1].Printed);
        Assert.Equal(["", "last"], blocks[2].Printed);
    }

    [Theory]
    [InlineData("a b c", "a b c", true)]
    [InlineData("a b", "a b c", false)]
    [InlineData("a b c", "a b", false)]
    [InlineData("a ... c", "a b b c", true)]
    [InlineData("a ... c", "a c", true)]
    [InlineData("a ... c", "a b", false)]
    [InlineData("... b ... c", "a b b c c", true)]
    [InlineData("...", "a", true)]
    public void Lines_Printed_MatchOrNot(string printed, string output, bool match)
    {
        var block = new ConsoleBlock("", 1, "", "", printed.Split(' '));

        Assert.Equal(match, block.Matches(output.Split(' ')));
    }
}
