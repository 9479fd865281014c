namespace Heapwright.App.Backups;

/// <summary>Why a backup was made.</summary>
public enum BackupKind
{
    /// <summary>It was night.</summary>
    Nightly,

    /// <summary>Someone asked for it.</summary>
    Asked,

    /// <summary>Another one was about to take the place of what was there.</summary>
    BeforeRestore,
}
