using Heapwright.App.Changes;

namespace Heapwright.Storage.Sqlite.Backups;

/// <summary>A backup that cannot be made or used, with the sentence for it; caught where the work was begun.</summary>
internal sealed class BackupProblem(Refusal refusal) : Exception(refusal.Field)
{
    public Refusal Refusal { get; } = refusal;

    public static BackupProblem Of(string code, params object[] values) =>
        new(Refusal.Of("file", "backup." + code, values));
}
