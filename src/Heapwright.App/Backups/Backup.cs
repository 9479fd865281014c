using NodaTime;

namespace Heapwright.App.Backups;

/// <summary>A backup as its own list of contents describes it.</summary>
/// <param name="Name">The name of its file, without a folder.</param>
/// <param name="Kind">Why it was made.</param>
/// <param name="MadeAt">When.</param>
/// <param name="Schema">The number of the form its database has.</param>
/// <param name="Engine">The version of the program that made it.</param>
/// <param name="Bytes">How large the file is.</param>
public sealed record Backup(
    string Name,
    BackupKind Kind,
    Instant MadeAt,
    int Schema,
    string Engine,
    long Bytes
);
