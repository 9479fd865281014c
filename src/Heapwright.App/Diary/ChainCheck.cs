namespace Heapwright.App.Diary;

/// <summary>Whether a diary is as it was written.</summary>
/// <param name="Entries">How many entries were gone through.</param>
/// <param name="FirstWrong">The place of the first entry that is not as it was written; null if all are.</param>
/// <param name="Head">The hash of the last entry that is right; it stands for everything before it.</param>
public sealed record ChainCheck(long Entries, long? FirstWrong, string Head)
{
    /// <summary>Whether everything is as it was written.</summary>
    public bool IsWhole => FirstWrong is null;
}
