using System.Collections.Immutable;
using System.IO.Compression;
using System.Reflection;
using System.Security.Cryptography;
using System.Text.Json;
using System.Text.RegularExpressions;
using Heapwright.App.Backups;
using NodaTime;

namespace Heapwright.Storage.Sqlite.Backups;

/// <summary>The zip of a backup: its list of contents, the database and the keys; nothing else may be in it.</summary>
internal static partial class BackupZip
{
    private const string ManifestName = "manifest.json";
    private const int LargestManifest = 1 << 20;
    private const int LargestKey = 1 << 16;
    private const int MostParts = 1000;
    private const int BlockBytes = 1 << 16;
    private const int Mebibyte = 1 << 20;

    /// <summary>Writes a zip and waits until it has reached the disk.</summary>
    /// <param name="target">The file, which must not be there yet.</param>
    /// <param name="database">The copy of the database.</param>
    /// <param name="keys">The key files.</param>
    /// <param name="kind">Why.</param>
    /// <param name="at">When.</param>
    /// <param name="schema">The number of the schema of the copy.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task Write(
        string target,
        string database,
        IEnumerable<string> keys,
        BackupKind kind,
        Instant at,
        int schema,
        CancellationToken cancel
    )
    {
        await using var file = new FileStream(target, FileMode.CreateNew, FileAccess.ReadWrite);
        await using (
            var zip = await ZipArchive.CreateAsync(
                file,
                ZipArchiveMode.Create,
                leaveOpen: true,
                entryNameEncoding: null,
                cancel
            )
        )
        {
            var parts = ImmutableArray.CreateBuilder<BackupPart>();
            parts.Add(await Add(zip, SqliteStorage.FileName, database, cancel));
            foreach (var key in keys.Where(k => KeyName().IsMatch("keys/" + Path.GetFileName(k))))
            {
                parts.Add(await Add(zip, "keys/" + Path.GetFileName(key), key, cancel));
            }

            var manifest = new BackupManifest
            {
                What = BackupManifest.Mark,
                Form = BackupManifest.CurrentForm,
                Schema = schema,
                Engine = Engine,
                MadeAt = at,
                Kind = kind,
                Parts = parts.ToImmutable(),
            };
            await using var entry = await zip.CreateEntry(ManifestName).OpenAsync(cancel);
            await JsonSerializer.SerializeAsync(entry, manifest, BackupManifest.Json, cancel);
        }

        file.Flush(flushToDisk: true);
    }

    /// <summary>The list of contents, held against the names in the zip.</summary>
    /// <param name="zip">The zip.</param>
    /// <param name="name">What the file is called.</param>
    /// <exception cref="BackupProblem">It is no backup that this program reads.</exception>
    public static BackupManifest Manifest(ZipArchive zip, string name)
    {
        if (zip.GetEntry(ManifestName) is not { Length: <= LargestManifest } entry)
        {
            throw BackupProblem.Of("no_manifest", name);
        }

        BackupManifest? manifest;
        try
        {
            using var stream = new BoundedStream(entry.Open(), LargestManifest);
            manifest = JsonSerializer.Deserialize<BackupManifest>(stream, BackupManifest.Json);
        }
        catch (JsonException)
        {
            manifest = null;
        }

        if (manifest is null || manifest.What != BackupManifest.Mark || manifest.Parts.IsDefault)
        {
            throw BackupProblem.Of("no_manifest", name);
        }

        if (manifest.Form > BackupManifest.CurrentForm)
        {
            throw BackupProblem.Of("newer_form", name, manifest.Form, BackupManifest.CurrentForm);
        }

        if (manifest.Schema > SiteContext.Schema)
        {
            throw BackupProblem.Of("newer_schema", name, manifest.Schema, SiteContext.Schema);
        }

        CheckNames(zip, manifest, name);
        return manifest;
    }

    /// <summary>Unpacks every part into a folder and holds it against the list of contents.</summary>
    /// <param name="zip">The zip.</param>
    /// <param name="manifest">Its list of contents.</param>
    /// <param name="folder">An empty folder.</param>
    /// <param name="most">The most bytes it may unpack to.</param>
    /// <param name="name">What the file is called.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="BackupProblem">A part is not as listed, or all are too large.</exception>
    public static async Task Unpack(
        ZipArchive zip,
        BackupManifest manifest,
        string folder,
        long most,
        string name,
        CancellationToken cancel
    )
    {
        if (
            manifest.Parts.Any(p => p.Bytes < 0 || p.Bytes > most)
            || manifest.Parts.Sum(p => (decimal)p.Bytes) > most
        )
        {
            throw BackupProblem.Of("too_large", name, most / Mebibyte);
        }

        CheckRoom(folder, manifest.Parts.Sum(p => p.Bytes));
        Directory.CreateDirectory(Path.Combine(folder, SqliteStorage.KeysFolder));
        foreach (var part in manifest.Parts)
        {
            // The names were held against those that a backup can have, so none leads out of the folder.
            await using var target = new FileStream(
                Path.Combine(folder, part.Name),
                FileMode.CreateNew
            );
            await using var source = await zip.GetEntry(part.Name)!.OpenAsync(cancel);
            var (bytes, sha256) = await Copy(source, target, part.Bytes, cancel);
            if (
                bytes != part.Bytes
                || !string.Equals(sha256, part.Sha256, StringComparison.OrdinalIgnoreCase)
            )
            {
                throw BackupProblem.Of("wrong_hash", name, part.Name);
            }
        }
    }

    /// <summary>Refuses work for which the disk has no room.</summary>
    /// <param name="folder">A folder on the disk.</param>
    /// <param name="bytes">What is needed.</param>
    /// <exception cref="BackupProblem">There is less.</exception>
    public static void CheckRoom(string folder, long bytes)
    {
        var left = new DriveInfo(Path.GetFullPath(folder)).AvailableFreeSpace;
        if (left < bytes)
        {
            throw BackupProblem.Of("no_room", left / Mebibyte, (bytes / Mebibyte) + 1);
        }
    }

    private static string Engine =>
        typeof(BackupManifest)
            .Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()
            ?.InformationalVersion
        ?? "";

    private static void CheckNames(ZipArchive zip, BackupManifest manifest, string name)
    {
        var there = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in zip.Entries)
        {
            if (
                !there.Add(entry.FullName)
                || there.Count > MostParts
                || !(
                    entry.FullName is ManifestName or SqliteStorage.FileName
                    || KeyName().IsMatch(entry.FullName)
                )
            )
            {
                throw BackupProblem.Of("wrong_name", name, Shortened(entry.FullName));
            }
        }

        var listed = new HashSet<string>(StringComparer.Ordinal) { ManifestName };
        foreach (var part in manifest.Parts)
        {
            if (!there.Contains(part.Name) || !listed.Add(part.Name))
            {
                throw BackupProblem.Of("part_missing", name, Shortened(part.Name));
            }

            if (part.Name != SqliteStorage.FileName && part.Bytes > LargestKey)
            {
                throw BackupProblem.Of("wrong_hash", name, part.Name);
            }
        }

        if (!listed.Contains(SqliteStorage.FileName))
        {
            throw BackupProblem.Of("part_missing", name, SqliteStorage.FileName);
        }

        there.ExceptWith(listed);
        if (there.FirstOrDefault() is { } stranger)
        {
            throw BackupProblem.Of("wrong_name", name, Shortened(stranger));
        }
    }

    private static string Shortened(string text) => text.Length > 60 ? text[..60] + "…" : text;

    private static async Task<BackupPart> Add(
        ZipArchive zip,
        string name,
        string file,
        CancellationToken cancel
    )
    {
        await using var source = File.OpenRead(file);
        await using var target = await zip.CreateEntry(name, CompressionLevel.Fastest)
            .OpenAsync(cancel);
        var (bytes, sha256) = await Copy(source, target, long.MaxValue, cancel);
        return new BackupPart(name, bytes, sha256);
    }

    // Stops one byte after the most: what is longer than listed is then seen to be.
    private static async Task<(long Bytes, string Sha256)> Copy(
        Stream source,
        Stream target,
        long most,
        CancellationToken cancel
    )
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var block = new byte[BlockBytes];
        long bytes = 0;
        int read;
        while (bytes <= most && (read = await source.ReadAsync(block, cancel)) > 0)
        {
            hash.AppendData(block, 0, read);
            await target.WriteAsync(block.AsMemory(0, read), cancel);
            bytes += read;
        }

        return (bytes, Convert.ToHexStringLower(hash.GetHashAndReset()));
    }

    [GeneratedRegex(
        "^keys/key-[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}\\.xml$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex KeyName();
}
