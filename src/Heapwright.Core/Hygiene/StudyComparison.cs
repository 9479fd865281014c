namespace Heapwright.Core.Hygiene;

/// <summary>A study beside a record.</summary>
/// <param name="Study">The study.</param>
/// <param name="ShownHours">The longest time that every probe shows the study's temperatures, hours; null where it names none.</param>
/// <param name="AsHotAsLong">Whether the record shows as much heat for as long; null where the study names no temperature or time.</param>
public sealed record StudyComparison(StudyResult Study, double? ShownHours, bool? AsHotAsLong);
