namespace Heapwright.App.Backups;

/// <summary>How much of what a database holds.</summary>
/// <param name="Heaps">Heaps that are followed or were.</param>
/// <param name="Entries">Entries of diaries, readings among them.</param>
/// <param name="Stock">Things at hand.</param>
/// <param name="Photos">Images.</param>
public sealed record BackupCounts(long Heaps, long Entries, long Stock, long Photos);
