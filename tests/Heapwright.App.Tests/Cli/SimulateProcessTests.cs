using System.Diagnostics;

namespace Heapwright.App.Tests.Cli;

/// <summary>The command <c>simulate</c> as a process: the same bytes on any number of threads, and tables from files.</summary>
public sealed class SimulateProcessTests : IDisposable
{
    private const string Heap = """
        "bin":{"shape":"box","length_m":1,"width_m":1,"height_m":1},"water_l":20,
        "ingredients":[{"material":"grass_clippings_fresh","amount":{"value":3,"unit":"wheelbarrow"}},
                       {"material":"leaves_mixed_dry","amount":{"value":4,"unit":"wheelbarrow"}}],
        "days":2,"members":40,"events":[{"day":1,"do":"turn"}]
        """;

    private readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Simulate_OnOneThreadAndOnFour_PrintsTheSameBytes()
    {
        var path = folder.File("heap.json");
        await File.WriteAllTextAsync(path, "{" + Heap + "}", TestContext.Current.CancellationToken);

        var one = await Run(path, "1");
        var four = await Run(path, "4");

        Assert.Equal(0, one.Status);
        Assert.Empty(one.Errors);
        Assert.StartsWith("{\"schema\":1,\"seed\":1,", one.Output, StringComparison.Ordinal);
        Assert.True(one.Output == four.Output, "the bytes differ");
    }

    [Fact]
    public async Task Simulate_TableBesideTheQuestion_IsFound()
    {
        var path = folder.File("heap.json");
        await File.WriteAllTextAsync(
            path,
            "{" + Heap + ",\"weather\":{\"hourly_csv\":\"sky.csv\"}}",
            TestContext.Current.CancellationToken
        );

        var missing = await Run(path, "2");
        Assert.Equal(2, missing.Status);
        Assert.Empty(missing.Output);
        Assert.StartsWith(
            $"{path}: weather.hourly_csv: there is no file \"sky.csv\"",
            missing.Errors,
            StringComparison.Ordinal
        );

        await File.WriteAllTextAsync(
            folder.File("sky.csv"),
            "time,air_c\n0,8\n2,12\n",
            TestContext.Current.CancellationToken
        );
        var found = await Run(path, "2");
        Assert.Equal(0, found.Status);
        Assert.Empty(found.Errors);
    }

    private static async Task<(int Status, string Output, string Errors)> Run(
        string path,
        string processors
    )
    {
        var start = new ProcessStartInfo("dotnet")
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["DOTNET_PROCESSOR_COUNT"] = processors;
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "heapwright.dll"));
        foreach (var arg in (string[])["simulate", "--json", "--input", path])
        {
            start.ArgumentList.Add(arg);
        }

        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await output, await errors);
    }
}
