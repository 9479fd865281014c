using Heapwright.Core.Reasons;

namespace Heapwright.App.Diary.Tables;

/// <summary>A row that was not taken.</summary>
/// <param name="Line">The line it begins on, from 1 on.</param>
/// <param name="Why">Why.</param>
public sealed record RefusedRow(long Line, Reason Why);
