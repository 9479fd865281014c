using Heapwright.App.Changes;

namespace Heapwright.App.Backups;

/// <summary>What became of making a backup, or of restoring one, before which one is made.</summary>
/// <param name="Backup">The backup that was made; null where there was none to make or it failed.</param>
/// <param name="Refusal">Why it failed; null if it did not.</param>
public sealed record BackupMade(Backup? Backup, Refusal? Refusal)
{
    /// <summary>A failure; nothing was changed.</summary>
    /// <param name="refusal">Why.</param>
    public static BackupMade Refused(Refusal refusal) => new(null, refusal);
}
