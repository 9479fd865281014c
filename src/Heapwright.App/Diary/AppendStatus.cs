namespace Heapwright.App.Diary;

/// <summary>What became of an entry that was to be added.</summary>
public enum AppendStatus
{
    /// <summary>It is kept.</summary>
    Kept,

    /// <summary>The same entry is there already.</summary>
    AlreadyThere,

    /// <summary>It was refused.</summary>
    Refused,
}
