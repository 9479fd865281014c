using System.Diagnostics;
using System.Text.Json.Nodes;

namespace Heapwright.Web.Tests;

/// <summary>The command line makes and restores backups of a folder on which the app may be running.</summary>
public sealed class BackupCommandTests : IDisposable
{
    private static readonly CancellationToken Never = CancellationToken.None;
    private readonly string folder = Directory.CreateTempSubdirectory("heapwright-cli-").FullName;

    [Fact]
    public async Task Backup_MadeListedRestored_GoesThere()
    {
        await Run("device add probe");
        var target = Path.Combine(folder, "out.zip");

        var made = await Run($"backup make --out {target} --json");
        var list = await Run("backup list");
        await Run("device add later");
        var restored = await Run($"backup restore {target} --json");

        Assert.Equal(0, made.Status);
        var name = JsonNode.Parse(made.Output)!["backup"]!["name"]!.GetValue<string>();
        Assert.StartsWith(name + "  made ", list.Output, StringComparison.Ordinal);
        Assert.Equal((0, ""), (restored.Status, restored.Errors));
        Assert.True(File.Exists(target));
        var devices = await Run("device list");
        Assert.Contains("probe", devices.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("later", devices.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Restore_WhileTheAppRuns_IsSeenByItAtOnceAndItGoesOnWriting()
    {
        await using var site = new SiteUnderTest();
        var caller = site.Caller();
        await caller.OwnSite();
        var target = Path.Combine(folder, "out.zip");
        await Run($"backup make --out {target}", data: site.Folder);
        await caller.NewBay("Later bay");

        var restored = await Run($"backup restore {target}", data: site.Folder);
        var after = await caller.GetStringAsync("/settings/bays", Never);
        await caller.NewBay("Newest bay");

        Assert.Equal((0, ""), (restored.Status, restored.Errors));
        Assert.DoesNotContain("Later bay", after, StringComparison.Ordinal);
        Assert.Contains(
            "Newest bay",
            await caller.GetStringAsync("/settings/bays", Never),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Restore_OfWhatIsNone_IsRefusedInOneLine()
    {
        var note = Path.Combine(folder, "note.txt");
        await File.WriteAllTextAsync(note, "a note", Never);

        var text = await Run($"backup restore {note}");
        var gone = await Run("backup restore gone.zip");

        Assert.Equal(2, text.Status);
        Assert.Equal(
            "heapwright: note.txt is no zip, or was cut off; choose a whole backup made by Heapwright. Nothing was changed.\n",
            text.Errors
        );
        Assert.Equal(2, gone.Status);
        Assert.StartsWith(
            "heapwright: There is no file \"gone.zip\"",
            gone.Errors,
            StringComparison.Ordinal
        );
    }

    // Files may not grow beyond so many blocks, as on a disk that is full.
    [Fact]
    public async Task Make_NoRoomForIt_SaysSoAndLeavesTheOlder()
    {
        await Run("device add probe");
        await Run("backup make");
        var before = Directory.GetFiles(Path.Combine(folder, "backups"));

        var (status, _, errors) = await Run(
            "backup make",
            "trap '' XFSZ; export DOTNET_EnableWriteXorExecute=0; ulimit -f 40;"
        );

        Assert.Equal(2, status);
        Assert.StartsWith(
            "heapwright: The backup could not be written to",
            errors,
            StringComparison.Ordinal
        );
        Assert.Equal(before, Directory.GetFiles(Path.Combine(folder, "backups")));
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private async Task<(int Status, string Output, string Errors)> Run(
        string words,
        string first = "",
        string? data = null
    )
    {
        var start = new ProcessStartInfo("bash")
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add(
            $"{first} exec dotnet {Path.Combine(AppContext.BaseDirectory, "heapwright.dll")} {words}"
        );
        start.Environment["HEAPWRIGHT_DATA"] = data ?? folder;
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(Never);
        var errors = process.StandardError.ReadToEndAsync(Never);
        await process.WaitForExitAsync(Never);
        return (process.ExitCode, await output, await errors);
    }
}
