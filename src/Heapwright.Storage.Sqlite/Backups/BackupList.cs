using System.IO.Compression;
using Heapwright.App.Backups;

namespace Heapwright.Storage.Sqlite.Backups;

/// <summary>What a file says of itself where backups are listed; its parts are not looked at.</summary>
internal static class BackupList
{
    public static Backup? Read(string file)
    {
        try
        {
            using var stream = File.OpenRead(file);
            using var zip = new ZipArchive(stream, ZipArchiveMode.Read);
            return Described(BackupZip.Manifest(zip, file), Path.GetFileName(file), stream.Length);
        }
        catch (Exception problem)
            when (problem
                    is BackupProblem
                        or IOException
                        or InvalidDataException
                        or UnauthorizedAccessException
            )
        {
            return null;
        }
    }

    public static Backup Described(BackupManifest manifest, string name, long bytes) =>
        new(name, manifest.Kind, manifest.MadeAt, manifest.Schema, manifest.Engine, bytes);
}
