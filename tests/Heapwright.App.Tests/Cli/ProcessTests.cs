using System.Diagnostics;

namespace Heapwright.App.Tests.Cli;

/// <summary>The program as it is started by a person: exit status and streams.</summary>
public sealed class ProcessTests
{
    [Fact]
    public async Task Version_IsPrintedAndExitsWithZero()
    {
        var (status, output, errors) = await Start("--version");

        Assert.Equal(0, status);
        Assert.Matches(@"^Heapwright \d+\.\d+\.\d+\n$", output);
        Assert.Empty(errors);
    }

    [Fact]
    public async Task UnknownOption_ExitsWithTwoAndAnEmptyOutput()
    {
        var (status, output, errors) = await Start("--vresion");

        Assert.Equal(2, status);
        Assert.Empty(output);
        Assert.StartsWith(
            "heapwright: \"--vresion\" is not an option; the nearest is --version",
            errors,
            StringComparison.Ordinal
        );
        Assert.Equal(1, errors.Count(c => c == '\n'));
    }

    private static async Task<(int Status, string Output, string Errors)> Start(
        params string[] args
    )
    {
        var start = new ProcessStartInfo("dotnet")
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "heapwright.dll"));
        foreach (var arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await output, await errors);
    }
}
