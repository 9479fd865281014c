using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Heapwright.App.Backups;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace Heapwright.Storage.Sqlite.Backups;

/// <summary>Backups of the SQLite file and the keys beside it, each one zip in the folder <c>backups</c>.</summary>
/// <param name="folder">The data folder.</param>
/// <param name="clock">Names and dates them.</param>
public sealed partial class SqliteBackups(string folder, TimeProvider clock) : IBackups
{
    /// <summary>How many of each kind are kept.</summary>
    public const int Keeps = 7;

    private const string Part = ".part-";
    private const int Busy = 5;
    private const int Corrupt = 11;
    private const int NotADatabase = 26;
    private static readonly TimeSpan Stale = TimeSpan.FromHours(1);

    /// <summary>The most bytes to which a backup may unpack.</summary>
    public long MostUnpackedBytes { get; init; } = 8L << 30;

    private string Live => Path.Combine(folder, SqliteStorage.FileName);

    private string Backups => Path.Combine(folder, "backups");

    private string HeldFile => Path.Combine(Backups, ".held.zip");

    /// <inheritdoc/>
    public Task<ImmutableArray<Backup>> All(CancellationToken cancel)
    {
        var found = new List<Backup>();
        foreach (var file in Directory.Exists(Backups) ? Directory.GetFiles(Backups) : [])
        {
            if (BackupName().IsMatch(Path.GetFileName(file)) && BackupList.Read(file) is { } backup)
            {
                found.Add(backup);
            }
        }

        return Task.FromResult(
            found
                .OrderByDescending(b => b.MadeAt)
                .ThenByDescending(b => b.Name, StringComparer.Ordinal)
                .ToImmutableArray()
        );
    }

    /// <inheritdoc/>
    public async Task<BackupMade> Make(BackupKind kind, CancellationToken cancel)
    {
        try
        {
            return new BackupMade(await MakeOrThrow(kind, cancel), null);
        }
        catch (BackupProblem problem)
        {
            return BackupMade.Refused(problem.Refusal);
        }
    }

    /// <inheritdoc/>
    public Stream? Open(string name) =>
        BackupName().IsMatch(name) && Path.Combine(Backups, name) is { } file && File.Exists(file)
            ? File.OpenRead(file)
            : null;

    /// <inheritdoc/>
    public async Task Hold(Stream file, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(file);
        Directory.CreateDirectory(Backups);
        var beside = Beside(".zip");
        try
        {
            await using (var target = new FileStream(beside, FileMode.CreateNew))
            {
                await file.CopyToAsync(target, cancel);
            }

            File.Move(beside, HeldFile, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }
    }

    /// <inheritdoc/>
    public Stream? Held() => File.Exists(HeldFile) ? File.OpenRead(HeldFile) : null;

    /// <inheritdoc/>
    public async Task<BackupLook> Look(Stream zip, string name, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(zip);
        try
        {
            var sha256 = await Hash(zip, cancel);
            return await Unpacked(
                zip,
                name,
                async (manifest, copy) =>
                {
                    await using var connection = Sql.Open(copy);
                    await Sql.Run(connection, "attach @live as live", cancel, ("@live", Live));
                    var (lost, acts) = await BackupCopy.Missing(connection, "live", "main", cancel);
                    return new BackupLook(
                        sha256,
                        BackupList.Described(manifest, name, zip.Length),
                        await BackupCopy.Count(connection, "main", cancel),
                        await BackupCopy.Count(connection, "live", cancel),
                        lost,
                        acts,
                        null
                    );
                },
                cancel
            );
        }
        catch (BackupProblem problem)
        {
            return BackupLook.Refused(problem.Refusal);
        }
    }

    /// <inheritdoc/>
    public async Task<BackupMade> Restore(
        Stream zip,
        string name,
        string? sha256,
        CancellationToken cancel
    )
    {
        ArgumentNullException.ThrowIfNull(zip);
        try
        {
            if (sha256 is not null && await Hash(zip, cancel) != sha256)
            {
                throw BackupProblem.Of("other_now", name);
            }

            return await Unpacked(
                zip,
                name,
                async (_, copy) =>
                {
                    Backup? before = null;
                    await BackupSwap.Replace(
                        Live,
                        copy,
                        async () =>
                        {
                            before = await HoldsAnything(cancel)
                                ? await MakeOrThrow(BackupKind.BeforeRestore, cancel)
                                : null;
                            BringKeys(Path.GetDirectoryName(copy)!);
                        },
                        cancel
                    );
                    return new BackupMade(before, null);
                },
                cancel
            );
        }
        catch (BackupProblem problem)
        {
            return BackupMade.Refused(problem.Refusal);
        }
        catch (SqliteException problem)
        {
            return BackupMade.Refused(
                (
                    problem.SqliteErrorCode switch
                    {
                        Busy => BackupProblem.Of("busy"),
                        Corrupt or NotADatabase => BackupProblem.Of(
                            "site_damaged",
                            problem.Message
                        ),
                        _ => BackupProblem.Of("not_written", Live, problem.Message),
                    }
                ).Refusal
            );
        }
    }

    private async Task<Backup> MakeOrThrow(BackupKind kind, CancellationToken cancel)
    {
        var database = Beside(".db");
        var zip = Beside(".zip");
        try
        {
            Directory.CreateDirectory(Backups);
            RemoveStale();
            BackupZip.CheckRoom(Backups, 2 * new FileInfo(Live).Length);
            var at = clock.Now();
            int schema;
            await using (var connection = Sql.Open(Live))
            {
                await Sql.Run(connection, "vacuum into @copy", cancel, ("@copy", database));
            }

            await using (var connection = Sql.Open(database))
            {
                schema = (int)
                    await Sql.Number(connection, "select max(number) from schema_number", cancel);
            }

            var keys = Path.Combine(folder, SqliteStorage.KeysFolder);
            await BackupZip.Write(
                zip,
                database,
                Directory.Exists(keys) ? Directory.GetFiles(keys) : [],
                kind,
                at,
                schema,
                cancel
            );
            var name = Place(zip, kind, at);
            var made = BackupList.Read(Path.Combine(Backups, name))!;
            await Prune(kind, cancel);
            return made;
        }
        catch (Exception problem)
            when (problem is IOException or UnauthorizedAccessException or SqliteException)
        {
            throw BackupProblem.Of("not_written", Backups, problem.Message);
        }
        finally
        {
            Remove(database);
            Remove(zip);
        }
    }

    // Moved to its name once it is whole; two in the same second get names of their own.
    private string Place(string zip, BackupKind kind, Instant at)
    {
        var stamp = at.ToDateTimeUtc()
            .ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
        for (var again = 1; ; again++)
        {
            var name = string.Create(
                CultureInfo.InvariantCulture,
                $"heapwright-{stamp}-{Word(kind)}{(again == 1 ? "" : "-" + again.ToString(CultureInfo.InvariantCulture))}.zip"
            );
            var target = Path.Combine(Backups, name);
            if (!File.Exists(target))
            {
                File.Move(zip, target);
                return name;
            }
        }
    }

    private async Task Prune(BackupKind kind, CancellationToken cancel)
    {
        foreach (var old in (await All(cancel)).Where(b => b.Kind == kind).Skip(Keeps))
        {
            Remove(Path.Combine(Backups, old.Name));
        }
    }

    // What was left behind when the program was killed.
    private void RemoveStale()
    {
        foreach (var left in Directory.GetFileSystemEntries(Backups, Part + "*"))
        {
            if (clock.GetUtcNow() - new DateTimeOffset(File.GetLastWriteTimeUtc(left)) > Stale)
            {
                Remove(left);
            }
        }
    }

    private async Task<T> Unpacked<T>(
        Stream zip,
        string name,
        Func<BackupManifest, string, Task<T>> use,
        CancellationToken cancel
    )
    {
        var place = Beside("");
        try
        {
            Directory.CreateDirectory(place);
            zip.Position = 0;
            using var archive = new ZipArchive(zip, ZipArchiveMode.Read, leaveOpen: true);
            var manifest = BackupZip.Manifest(archive, name);
            await BackupZip.Unpack(archive, manifest, place, MostUnpackedBytes, name, cancel);
            await BackupCopy.BringUpToDate(place, name, cancel);
            return await use(manifest, Path.Combine(place, SqliteStorage.FileName));
        }
        catch (InvalidDataException)
        {
            throw BackupProblem.Of("not_zip", name);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw BackupProblem.Of("not_written", Backups, problem.Message);
        }
        finally
        {
            Remove(place);
        }
    }

    private async Task<bool> HoldsAnything(CancellationToken cancel)
    {
        await using var connection = Sql.Open(Live);
        return await Sql.Number(
                connection,
                "select exists (select 1 from act) or exists (select 1 from diary_entry)",
                cancel
            ) > 0;
    }

    // Keys are added and none is taken away: what was signed before or after the backup is still understood.
    private void BringKeys(string from)
    {
        var keys = Path.Combine(folder, SqliteStorage.KeysFolder);
        foreach (var key in Directory.GetFiles(Path.Combine(from, SqliteStorage.KeysFolder)))
        {
            var target = Path.Combine(keys, Path.GetFileName(key));
            if (!File.Exists(target))
            {
                Directory.CreateDirectory(keys);
                File.Copy(key, target);
            }
        }
    }

    private static async Task<string> Hash(Stream zip, CancellationToken cancel)
    {
        zip.Position = 0;
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(zip, cancel));
    }

    private static string Word(BackupKind kind) =>
        kind switch
        {
            BackupKind.Nightly => "nightly",
            BackupKind.Asked => "asked",
            _ => "before-restore",
        };

    private string Beside(string ending) =>
        Path.Combine(Backups, $"{Part}{Guid.CreateVersion7():N}{ending}");

    private static void Remove(string path)
    {
        try
        {
            if (Directory.Exists(path))
            {
                Directory.Delete(path, recursive: true);
            }
            else
            {
                File.Delete(path);
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // It is tried again with the next backup.
        }
    }

    [GeneratedRegex(
        "^heapwright-[0-9]{8}T[0-9]{6}Z-(nightly|asked|before-restore)(-[0-9]{1,4})?\\.zip$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex BackupName();
}
