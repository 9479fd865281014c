namespace Heapwright.Core.Hygiene;

/// <summary>How the days of a run are counted.</summary>
public enum DayCount
{
    /// <summary>Calendar days with a reading of every probe, all of them hot.</summary>
    Readings,

    /// <summary>Elapsed time between hot readings, 24 hours being a day.</summary>
    Elapsed,
}
