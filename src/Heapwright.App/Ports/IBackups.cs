using System.Collections.Immutable;
using Heapwright.App.Backups;

namespace Heapwright.App.Ports;

/// <summary>Makes backups of everything that is kept, and puts one in its place.</summary>
public interface IBackups
{
    /// <summary>The backups in the folder for them, the newest first; files that are none are left out.</summary>
    /// <param name="cancel">Gives up.</param>
    Task<ImmutableArray<Backup>> All(CancellationToken cancel);

    /// <summary>
    /// Makes a backup and keeps the newest seven of its kind. It is there whole or not at all, and where it fails those of
    /// before stay.
    /// </summary>
    /// <param name="kind">Why.</param>
    /// <param name="cancel">Gives up.</param>
    Task<BackupMade> Make(BackupKind kind, CancellationToken cancel);

    /// <summary>The bytes of a backup in the folder; null where there is none of this name.</summary>
    /// <param name="name">The name of its file.</param>
    Stream? Open(string name);

    /// <summary>Puts a file aside until it was looked at; one at a time.</summary>
    /// <param name="file">Its bytes.</param>
    /// <param name="cancel">Gives up.</param>
    Task Hold(Stream file, CancellationToken cancel);

    /// <summary>The file that was put aside; null where there is none.</summary>
    Stream? Held();

    /// <summary>What is in a backup, after every check, and what would be lost; nothing is changed.</summary>
    /// <param name="zip">The backup; it must be able to seek.</param>
    /// <param name="name">What it is called.</param>
    /// <param name="cancel">Gives up.</param>
    Task<BackupLook> Look(Stream zip, string name, CancellationToken cancel);

    /// <summary>
    /// Puts a backup in the place of what is there, of which a backup is made first. All of it or nothing, also while
    /// others read and write. Tokens that were taken back stay so.
    /// </summary>
    /// <param name="zip">The backup; it must be able to seek.</param>
    /// <param name="name">What it is called.</param>
    /// <param name="sha256">The hash it had when it was looked at; null for whatever it is.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>The backup of what was there before; null where nothing was kept.</returns>
    Task<BackupMade> Restore(Stream zip, string name, string? sha256, CancellationToken cancel);
}
