namespace Heapwright.App.Diary;

/// <summary>What became of one entry.</summary>
/// <param name="Id">The entry.</param>
/// <param name="Status">Kept, already there, or refused because another entry has its id.</param>
public sealed record AppendOutcome(Guid Id, AppendStatus Status);
