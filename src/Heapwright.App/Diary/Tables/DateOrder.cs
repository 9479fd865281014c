namespace Heapwright.App.Diary.Tables;

/// <summary>The order in which a date with slashes is written.</summary>
public enum DateOrder
{
    /// <summary>31/5/2026.</summary>
    DayFirst,

    /// <summary>5/31/2026.</summary>
    MonthFirst,
}
