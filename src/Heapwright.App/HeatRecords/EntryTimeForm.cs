namespace Heapwright.App.HeatRecords;

/// <summary>The forms in which the time of an entry may be written.</summary>
public enum EntryTimeForm
{
    /// <summary>Days since building.</summary>
    Day,

    /// <summary>ISO 8601 with an offset.</summary>
    WithOffset,

    /// <summary>ISO 8601 without an offset, or a date alone.</summary>
    WithoutOffset,
}
