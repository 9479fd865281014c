using System.Text;
using CsCheck;

namespace Heapwright.App.Tests.Cli;

public sealed class AnswerTests
{
    [Fact]
    public void Mix_WithJson_IsOneDocument()
    {
        var terminal = Typed("{\"number\": 3}");

        Assert.Equal(0, SampleCommands.Run(terminal, "mix", "--input", "-", "--json"));

        Assert.Equal("{\"schema\":1,\"double\":6}\n", terminal.Output);
        Assert.Empty(terminal.Complaints);
    }

    [Fact]
    public void Mix_WithoutJson_IsText()
    {
        var terminal = Typed("{\"number\": 3}");

        Assert.Equal(0, SampleCommands.Run(terminal, "mix", "--input=-"));

        Assert.Equal("twice is 6 °\n", terminal.Output);
    }

    [Fact]
    public void Mix_WithASeed_PassesItOn()
    {
        var terminal = Typed("{\"number\": 3}");

        Assert.Equal(
            0,
            SampleCommands.Run(
                terminal,
                "mix",
                "--seed",
                "9007199254740991",
                "--json",
                "--input",
                "-"
            )
        );

        Assert.Equal("{\"schema\":1,\"double\":6,\"seed\":9007199254740991}\n", terminal.Output);
    }

    [Fact]
    public void Seed_InTheQuestionAndBesideIt_IsRefused()
    {
        var terminal = Typed("{\"number\": 3, \"seed\": 4}");

        Assert.Equal(2, SampleCommands.Run(terminal, "mix", "--seed", "3", "--input", "-"));

        Assert.Empty(terminal.Output);
        Assert.Contains(
            "seed: stands beside --seed; write the seed in one of the two places",
            Assert.Single(terminal.Complaints),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Mix_AnsweredNo_ExitsWithOneAndStillAnswers()
    {
        var terminal = Typed("{\"number\": 5}");

        Assert.Equal(1, SampleCommands.Run(terminal, "mix", "--json", "--input", "-"));

        Assert.Equal("{\"schema\":1,\"double\":10}\n", terminal.Output);
        Assert.Empty(terminal.Complaints);
    }

    [Theory]
    [InlineData(
        "{\"nubmer\": 3}",
        "standard input: the field \"nubmer\" is not known; the nearest is \"number\""
    )]
    [InlineData(
        "{\"number\": 30}",
        "standard input: number: 30 is out of range; 0 to 9 is allowed"
    )]
    [InlineData("{\"number\": 3", "standard input: is not JSON (line 1, column 13)")]
    [InlineData("", "standard input: is empty; one JSON object is needed")]
    public void Mix_WrongQuestion_IsRefusedInOneSentence(string question, string sentence)
    {
        var terminal = Typed(question);

        Assert.Equal(2, SampleCommands.Run(terminal, "mix", "--json", "--input", "-"));

        Assert.StartsWith(sentence, Assert.Single(terminal.Complaints), StringComparison.Ordinal);
        Assert.Empty(terminal.Output);
    }

    [Fact]
    public void Mix_WithoutInput_SaysHowToGiveIt()
    {
        var terminal = new MemoryTerminal();

        Assert.Equal(2, SampleCommands.Run(terminal, "mix", "--json"));

        Assert.Equal(
            "mix: no question was given; write --input FILE, or --input - to read it from standard input (\"heapwright mix --help\" tells more)",
            Assert.Single(terminal.Complaints)
        );
    }

    [Fact]
    public void Mix_FaultOfOurOwn_IsOneLineWithoutStackTrace()
    {
        var terminal = Typed("{\"number\": 7}");

        Assert.Equal(2, SampleCommands.Run(terminal, "mix", "--json", "--input", "-"));

        var line = Assert.Single(terminal.Complaints);
        Assert.StartsWith(
            "something went wrong inside Heapwright: InvalidOperationException: seven breaks",
            line,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain('\n', line);
        Assert.DoesNotContain(" at Heapwright", line, StringComparison.Ordinal);
        Assert.Empty(terminal.Output);
    }

    [Fact]
    public void Mix_AnyBytes_EndInAnAnswerOrOneSentence() =>
        Gen
            .Byte.Array[0, 200]
            .Sample(bytes =>
            {
                var terminal = new MemoryTerminal { Input = new MemoryStream(bytes) };
                var status = SampleCommands.Run(terminal, "mix", "--json", "--input", "-");
                return status == 2
                    ? terminal.Output.Length == 0
                        && terminal.Complaints.Count == 1
                        && !terminal.Complaints[0].Any(char.IsControl)
                    : status is 0 or 1 && terminal.Complaints.Count == 0;
            });

    private static MemoryTerminal Typed(string text) =>
        new() { Input = new MemoryStream(Encoding.UTF8.GetBytes(text)) };
}
