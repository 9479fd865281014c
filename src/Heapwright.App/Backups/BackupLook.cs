using Heapwright.App.Changes;

namespace Heapwright.App.Backups;

/// <summary>What is in a backup, and what would go if it took the place of what is there now.</summary>
/// <param name="Sha256">The hash of the whole file, in hexadecimal digits: what was looked at is what is restored.</param>
/// <param name="Backup">The backup; null where it is refused.</param>
/// <param name="Holds">What it holds.</param>
/// <param name="Now">What is there now.</param>
/// <param name="Lost">What is there now and not in the backup.</param>
/// <param name="ChangesLost">Acts in the record of now that are not in that of the backup.</param>
/// <param name="Refusal">Why it cannot be restored; null if it can.</param>
public sealed record BackupLook(
    string Sha256,
    Backup? Backup,
    BackupCounts? Holds,
    BackupCounts? Now,
    BackupCounts? Lost,
    long ChangesLost,
    Refusal? Refusal
)
{
    /// <summary>A backup that cannot be restored.</summary>
    /// <param name="refusal">Why.</param>
    public static BackupLook Refused(Refusal refusal) =>
        new("", null, null, null, null, 0, refusal);
}
