using Heapwright.Core.Readings;

namespace Heapwright.App.Diary;

/// <summary>An entry with what was thought of it when it arrived.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Verdict">The verdict on a reading; null for what is no reading.</param>
public sealed record JudgedEntry(DiaryEntry Entry, PlausibilityVerdict? Verdict);
