using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Backups;
using Heapwright.App.Changes;
using Heapwright.App.Contract;
using Heapwright.App.Ports;
using Heapwright.Cli.Files;
using NodaTime.Text;
using Words = Heapwright.App.Texts.Words;

namespace Heapwright.Cli.Commands;

/// <summary>The commands that make backups and restore them, in the order of the help.</summary>
/// <param name="open">Opens the backups of a folder.</param>
internal sealed class BackupCommands(Func<string, IBackups> open)
{
    /// <summary>The commands.</summary>
    /// <param name="open">Opens the backups of a folder.</param>
    public static ImmutableArray<Command> Over(Func<string, IBackups> open)
    {
        BackupCommands backups = new(open);
        return
        [
            new("backup make", backups.Make) { Takes = ["--out"] },
            new("backup list", backups.List),
            new("backup restore", backups.Restore) { WordsAre = "FILE" },
        ];
    }

    private Reply Make(Call call)
    {
        var target = call.Value("--out");
        if (target is not null)
        {
            OutputFiles.Check("--out", target);
        }

        var backups = Stored.OpenFolder(call, open);
        var made = Stored.Await(backups.Make(BackupKind.Asked, CancellationToken.None));
        var backup = made.Backup ?? throw Wrong(made.Refusal!);
        if (target is not null)
        {
            using var bytes = backups.Open(backup.Name)!;
            OutputFiles.Copy("--out", target, bytes);
        }

        return new Answer(
            new JsonObject { ["schema"] = 1, ["backup"] = Json(backup) },
            Yes: true,
            target is null
                ? Words.Of("backup.made", null, backup.Name)
                : Words.Of("backup.made_out", null, backup.Name, target)
        );
    }

    private Reply List(Call call)
    {
        var all = Stored.Await(Stored.OpenFolder(call, open).All(CancellationToken.None));
        var lines = all.Select(b =>
            Words.Of(
                "backup.line",
                null,
                b.Name,
                InstantPattern.General.Format(b.MadeAt),
                Words.Of("backup.kind_" + Word(b.Kind)),
                b.Schema,
                b.Bytes
            )
        );
        return new Answer(
            new JsonObject
            {
                ["schema"] = 1,
                ["backups"] = new JsonArray([.. all.Select(b => (JsonNode)Json(b))]),
            },
            Yes: true,
            all.IsEmpty ? Words.Of("backup.none") : string.Join('\n', lines)
        );
    }

    private Reply Restore(Call call)
    {
        var word = string.Join(' ', call.Words);
        var backups = Stored.OpenFolder(call, open);
        using var zip = backups.Open(word) ?? FromFile(word);
        var name = Path.GetFileName(word);
        var restored = Stored.Await(backups.Restore(zip, name, null, CancellationToken.None));
        return restored.Refusal is { } refusal
            ? throw Wrong(refusal)
            : new Answer(
                new JsonObject
                {
                    ["schema"] = 1,
                    ["restored"] = name,
                    ["before"] = restored.Backup is { } before ? Json(before) : null,
                },
                Yes: true,
                restored.Backup is { } kept
                    ? Words.Of("backup.restored", null, name, kept.Name)
                    : Words.Of("backup.restored_empty", null, name)
            );
    }

    private static FileStream FromFile(string path)
    {
        try
        {
            return File.OpenRead(path);
        }
        catch (Exception problem)
            when (problem is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw Stored.Wrong("backup.no_file", path);
        }
    }

    private static JsonObject Json(Backup backup) =>
        new()
        {
            ["name"] = backup.Name,
            ["kind"] = Word(backup.Kind),
            ["made_at"] = InstantPattern.ExtendedIso.Format(backup.MadeAt),
            ["database_schema"] = backup.Schema,
            ["engine"] = backup.Engine,
            ["bytes"] = backup.Bytes,
        };

    private static string Word(BackupKind kind) =>
        kind switch
        {
            BackupKind.Nightly => "nightly",
            BackupKind.Asked => "asked",
            _ => "before_restore",
        };

    private static InputProblem Wrong(Refusal refusal) =>
        new("heapwright", "", Words.Of(refusal.Why));
}
