namespace Heapwright.App.Diary;

/// <summary>What was done against a cause before, and what came of it.</summary>
/// <param name="Cause">The id of the cause.</param>
/// <param name="Answer">The answer to "did it help?": <c>yes</c> or <c>no</c>.</param>
/// <param name="DaysAgo">Days since it was answered.</param>
public sealed record TriedRemedy(string Cause, string Answer, double DaysAgo);
