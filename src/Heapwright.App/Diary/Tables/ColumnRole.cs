namespace Heapwright.App.Diary.Tables;

/// <summary>What a column of a table of readings is for.</summary>
public enum ColumnRole
{
    /// <summary>Date and time, or seconds since 1970.</summary>
    Time,

    /// <summary>The date, where the time of day has a column of its own.</summary>
    Date,

    /// <summary>The time of day.</summary>
    Clock,

    /// <summary>Days since building.</summary>
    Day,

    /// <summary>The temperature.</summary>
    Temperature,

    /// <summary>Where the probe stood, or its name.</summary>
    Spot,

    /// <summary>How deep the probe stood.</summary>
    Depth,

    /// <summary>The temperature of the air.</summary>
    Air,

    /// <summary>What was done, or a note.</summary>
    Event,
}
