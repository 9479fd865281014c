using System.Text;

namespace Heapwright.App.Tests.Cli;

public sealed class FileTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Input_File_IsReadAndNamedInComplaints()
    {
        var path = folder.File("mix.json");
        File.WriteAllText(path, "{\"number\": 12}");

        Refused($"{path}: number: 12 is out of range", "mix", "--input", path);
    }

    [Fact]
    public void Input_WithByteOrderMark_IsRead()
    {
        var path = folder.File("mix.json");
        File.WriteAllText(path, "{\"number\": 2}", new UTF8Encoding(true));
        var terminal = new MemoryTerminal();

        Assert.Equal(0, SampleCommands.Run(terminal, "mix", "--input", path));
        Assert.Equal("twice is 4 °\n", terminal.Output);
    }

    [Fact]
    public void Input_Missing_IsRefused()
    {
        var path = folder.File("none.json");
        Refused($"{path}: there is no such file", "mix", "--input", path);
        path = folder.File("no/folder/none.json");
        Refused($"{path}: there is no such file", "mix", "--input", path);
    }

    [Fact]
    public void Input_Folder_IsRefused() =>
        Refused($"{folder.Path}: is a folder", "mix", "--input", folder.Path);

    [Fact]
    public void Input_ThatNoPathCanBe_IsRefused() =>
        Refused("a b: cannot be read", "mix", "--input", "a\0b");

    [Fact]
    public void Input_NotUtf8_IsRefused()
    {
        var path = folder.File("mix.json");
        File.WriteAllBytes(path, [0x7B, 0x22, 0xE9, 0x22, 0x7D]);
        Refused($"{path}: is not UTF-8 text", "mix", "--input", path);
        File.WriteAllText(path, "{\"number\": 2}", Encoding.Unicode);
        Refused($"{path}: is not UTF-8 text", "mix", "--input", path);
    }

    [Theory]
    [InlineData(1_048_576, "is not JSON")]
    [InlineData(1_048_577, "is larger than 1048576 bytes")]
    public void Input_AtItsLargest_IsReadAndNoMore(int bytes, string sentence)
    {
        var path = folder.File("mix.json");
        File.WriteAllText(path, new string(' ', bytes));
        Refused($"{path}: {sentence}", "mix", "--input", path);
    }

    [Fact]
    public void Input_WithoutEnd_IsNotReadForEver() =>
        Refused("/dev/zero: is larger than 1048576 bytes", "mix", "--input", "/dev/zero");

    [Fact]
    public void Drawings_AreWrittenWholeAndNothingElse()
    {
        var terminal = Asked();

        Assert.Equal(
            0,
            SampleCommands.Run(
                terminal,
                "build",
                "--input",
                "-",
                "--json",
                "--svg",
                folder.File("a.svg"),
                "--pdf",
                folder.File("b.pdf"),
                "--paper",
                "letter"
            )
        );

        Assert.Equal(["a.svg", "b.pdf"], folder.Names);
        Assert.Equal("<svg/>", File.ReadAllText(folder.File("a.svg")));
        Assert.Equal("%PDF on letter", File.ReadAllText(folder.File("b.pdf")));
        Assert.Equal("{\"schema\":1,\"double\":6}\n", terminal.Output);
    }

    [Fact]
    public void Drawing_OverAnOlderOne_ReplacesIt()
    {
        File.WriteAllText(folder.File("a.svg"), "a much longer older drawing");

        Assert.Equal(
            0,
            SampleCommands.Run(Asked(), "build", "--input", "-", "--svg", folder.File("a.svg"))
        );

        Assert.Equal("<svg/>", File.ReadAllText(folder.File("a.svg")));
        Assert.Equal(["a.svg"], folder.Names);
    }

    [Fact]
    public void Drawing_ThroughALink_ReplacesItsTarget()
    {
        File.WriteAllText(folder.File("target.svg"), "old");
        File.CreateSymbolicLink(folder.File("link.svg"), folder.File("target.svg"));

        Assert.Equal(
            0,
            SampleCommands.Run(Asked(), "build", "--input", "-", "--svg", folder.File("link.svg"))
        );

        Assert.Equal("<svg/>", File.ReadAllText(folder.File("target.svg")));
        Assert.NotNull(new FileInfo(folder.File("link.svg")).LinkTarget);
    }

    [Fact]
    public void Drawing_WhereTheQuestionIsWrong_LeavesTheOldFileAlone()
    {
        File.WriteAllText(folder.File("a.svg"), "old");

        var terminal = Asked("{\"number\": 70}");
        Assert.Equal(
            2,
            SampleCommands.Run(terminal, "build", "--input", "-", "--svg", folder.File("a.svg"))
        );

        Assert.Equal("old", File.ReadAllText(folder.File("a.svg")));
        Assert.Equal(["a.svg"], folder.Names);
    }

    [Fact]
    public void Drawing_AnsweredNo_DrawsNothingAndStillAnswers()
    {
        var terminal = Asked("{\"number\": 6}");

        Assert.Equal(
            1,
            SampleCommands.Run(terminal, "build", "--input", "-", "--svg", folder.File("a.svg"))
        );

        Assert.Equal("twice is 12 °\n", terminal.Output);
        Assert.Empty(folder.Names);
    }

    [Fact]
    public void Drawing_WhereNoFileCanBe_IsRefusedBeforeAnyWork()
    {
        Refused("--svg: " + folder.Path + ": is a folder", "build", "--svg", folder.Path);
        Refused("--svg: /dev/null: is a device", "build", "--svg", "/dev/null");
        var lost = folder.File("no/a.pdf");
        Refused($"--pdf: {lost}: is in a folder that does not exist", "build", "--pdf", lost);
        Assert.Empty(folder.Names);
    }

    private static void Refused(string sentence, params string[] args)
    {
        var terminal = new MemoryTerminal();

        Assert.Equal(2, SampleCommands.Run(terminal, args));

        Assert.StartsWith(sentence, Assert.Single(terminal.Complaints), StringComparison.Ordinal);
        Assert.Empty(terminal.Output);
    }

    private static MemoryTerminal Asked(string question = "{\"number\": 3}") =>
        new() { Input = new MemoryStream(Encoding.UTF8.GetBytes(question)) };
}
