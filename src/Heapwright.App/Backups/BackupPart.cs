namespace Heapwright.App.Backups;

/// <summary>One part of a backup.</summary>
/// <param name="Name">Its name in the zip.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="Sha256">The hash of its bytes, in hexadecimal digits.</param>
public sealed record BackupPart(string Name, long Bytes, string Sha256);
