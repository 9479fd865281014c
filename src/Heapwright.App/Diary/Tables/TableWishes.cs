namespace Heapwright.App.Diary.Tables;

/// <summary>What the person says of a table, so that it need not be guessed.</summary>
/// <param name="Fahrenheit">Whether temperatures are in °F; null to find out.</param>
/// <param name="Dates">The order of dates with slashes; null to find out.</param>
public sealed record TableWishes(bool? Fahrenheit = null, DateOrder? Dates = null);
